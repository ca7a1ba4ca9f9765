package org.tableweather.server.analysis;

import java.util.List;

/**
 * What is expected of one shot today.
 *
 * @param shot its id
 * @param sentences what is expected, each with its band
 * @param pool what the pooled analysis says of it, in its own words
 * @param cautions what a reader must know before trusting it
 * @param curve query of the pooled curve over this span
 */
record ShotDrift(String shot, List<String> sentences, String pool, List<String> cautions, String curve) {
    ShotDrift {
        sentences = List.copyOf(sentences);
        cautions = List.copyOf(cautions);
    }
}
