package org.tableweather.server.web;

import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Variant;
import java.util.List;
import java.util.Locale;

/** In which form a table is answered: by the parameter {@code format}, or else by the header Accept. */
public enum Form {
    /** One page, with a cursor to the next. */
    JSON(MediaType.APPLICATION_JSON_TYPE),
    /** Everything, or one page when a limit is given; a header row, names in snake_case with units. */
    CSV(new MediaType("text", "csv", "utf-8")),
    /** Everything, or one page when a limit is given; one JSON object a line. */
    NDJSON(new MediaType("application", "x-ndjson")),
    /** Everything, or one page when a limit is given; a file that stands alone. */
    PARQUET(new MediaType("application", "vnd.apache.parquet"));

    /** Media type of {@link #CSV} for annotations. */
    public static final String CSV_TYPE = "text/csv";

    /** Media type of {@link #NDJSON} for annotations. */
    public static final String NDJSON_TYPE = "application/x-ndjson";

    /** Media type of {@link #PARQUET} for annotations. */
    public static final String PARQUET_TYPE = "application/vnd.apache.parquet";

    private final MediaType type;
    private final String parameter = name().toLowerCase(Locale.ROOT);

    Form(MediaType type) {
        this.type = type;
    }

    /** The media type. */
    public MediaType type() {
        return type;
    }

    /** A page or a table: {@link #JSON} or {@link #CSV}. */
    public static Form of(Request request, String format) {
        return of(request, format, List.of(JSON, CSV));
    }

    /**
     * The form asked for.
     *
     * @param request with its header Accept
     * @param format name of a form in small letters; null when not given
     * @param known forms that the address has, the usual one first
     * @throws Refusal for another format
     */
    public static Form of(Request request, String format, List<Form> known) {
        if (format != null) {
            return known.stream()
                    .filter(form -> form.parameter.equals(format))
                    .findFirst()
                    .orElseThrow(() -> unknown(format, known));
        }
        List<Variant> variants = Variant.mediaTypes(
                        known.stream().map(Form::plain).toArray(MediaType[]::new))
                .build();
        Variant chosen = request.selectVariant(variants);
        return known.stream()
                .filter(form -> chosen != null && form.plain().equals(chosen.getMediaType()))
                .findFirst()
                .orElse(known.get(0));
    }

    private MediaType plain() {
        return new MediaType(type.getType(), type.getSubtype());
    }

    private static Refusal unknown(String format, List<Form> known) {
        List<String> names = known.stream().map(form -> form.parameter).toList();
        return new Refusal(
                ErrorCode.BAD_REQUEST,
                "format = " + format + " is not one of " + String.join(", ", names) + ": choose one of them");
    }
}
