package org.tableweather.server.analysis;

import io.quarkus.qute.TemplateInstance;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.tableweather.server.catalogue.Catalogue;

/** Pages that were drawn lately: each once for a state of the catalogue. */
@ApplicationScoped
class Answers {
    private static final int KEPT = 100;

    private final Catalogue catalogue;
    private final Map<String, String> pages = Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
            return size() > KEPT;
        }
    });

    Answers(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** Names the state that pages show now. */
    String state() {
        return catalogue.state();
    }

    /**
     * The page at an address.
     *
     * @param state that it shows
     * @param address with its query
     * @param fresh draws it
     */
    String page(String state, String address, Supplier<TemplateInstance> fresh) {
        String key = state + " " + address;
        String known = pages.get(key);
        if (known != null) {
            return known;
        }
        String drawn = fresh.get().render();
        pages.put(key, drawn);
        return drawn;
    }
}
