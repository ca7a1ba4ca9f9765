package org.tableweather.server.accounts;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What a token may do. Reading needs none. */
public enum Scope {
    /** Contribute, and withdraw one's own. */
    CONTRIBUTE,
    /** Accept and withdraw any contribution. */
    CURATE,
    /** Make accounts and tokens, read the audit trail. */
    OPERATE;

    /** Name of {@link #CONTRIBUTE} for annotations. */
    public static final String CONTRIBUTE_NAME = "contribute";

    /** Name of {@link #CURATE} for annotations. */
    public static final String CURATE_NAME = "curate";

    /** Name of {@link #OPERATE} for annotations. */
    public static final String OPERATE_NAME = "operate";

    /** The name in JSON. */
    @JsonValue
    public String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Names with spaces between, in a fixed order. */
    static String join(Set<Scope> scopes) {
        return new TreeSet<>(scopes).stream().map(Scope::schemaName).collect(Collectors.joining(" "));
    }

    /** The scopes of such a text. */
    static Set<Scope> split(String text) {
        return Arrays.stream(text.split(" "))
                .map(name -> valueOf(name.toUpperCase(Locale.ROOT)))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
