package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.meta.MetaAnalysis;
import org.tableweather.analyzers.standard.statistics.meta.MetaAnalysis.Omission;
import org.tableweather.analyzers.standard.statistics.meta.StudyEffect;

/**
 * The mean slope without each room in turn.
 *
 * @param list in the order of the rooms; without those whose others leave no scatter
 * @param tooMany whether there were too many rooms to do it
 */
record Omissions(List<Omission> list, boolean tooMany) {

    private static final int LEAST = 3;
    /** The work grows with the square of the rooms. */
    static final int MOST = 500;

    static Omissions of(List<StudyEffect> effects, MetaAnalysis analysis) {
        List<Omission> list = new ArrayList<>();
        if (effects.size() >= LEAST && effects.size() <= MOST) {
            for (int i = 0; i < effects.size(); i++) {
                List<StudyEffect> others = new ArrayList<>(effects);
                String left = others.remove(i).label();
                analysis.fit(others).fold(without -> list.add(new Omission(left, without)), refusal -> false);
            }
        }
        return new Omissions(List.copyOf(list), effects.size() > MOST);
    }

    List<Map<String, Object>> facts() {
        List<Map<String, Object>> facts = new ArrayList<>();
        for (Omission one : list) {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("without", one.label());
            row.put("slope", one.without().mean().value());
            row.put("lower", one.without().mean().interval().lower());
            row.put("upper", one.without().mean().interval().upper());
            row.put("tauSquared", one.without().heterogeneity().tauSquared());
            row.put("q", one.without().heterogeneity().q());
            facts.add(row);
        }
        return facts;
    }
}
