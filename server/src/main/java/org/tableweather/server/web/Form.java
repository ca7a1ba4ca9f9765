package org.tableweather.server.web;

import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Variant;
import java.util.List;

/** In which form a table is answered: by the parameter {@code format}, or else by the header Accept. */
public enum Form {
    /** One page, with a cursor to the next. */
    JSON(MediaType.APPLICATION_JSON_TYPE),
    /** Everything, or one page when a limit is given; a header row, names in snake_case with units. */
    CSV(new MediaType("text", "csv", "utf-8"));

    /** Media type of {@link #CSV} for annotations. */
    public static final String CSV_TYPE = "text/csv";

    private final MediaType type;

    Form(MediaType type) {
        this.type = type;
    }

    /** The media type. */
    public MediaType type() {
        return type;
    }

    /**
     * The form asked for.
     *
     * @param request with its header Accept
     * @param format {@code json} or {@code csv}; null when not given
     * @throws Refusal for another format
     */
    public static Form of(Request request, String format) {
        if (format != null) {
            return switch (format) {
                case "json" -> JSON;
                case "csv" -> CSV;
                default ->
                    throw new Refusal(
                            ErrorCode.BAD_REQUEST,
                            "format = " + format + " is not one of json, csv: choose one of them");
            };
        }
        List<Variant> variants = Variant.mediaTypes(MediaType.APPLICATION_JSON_TYPE, new MediaType("text", "csv"))
                .build();
        Variant chosen = request.selectVariant(variants);
        return chosen != null && chosen.getMediaType().getSubtype().equals("csv") ? CSV : JSON;
    }
}
