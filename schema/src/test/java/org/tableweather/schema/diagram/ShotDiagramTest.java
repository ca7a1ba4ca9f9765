package org.tableweather.schema.diagram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.equipment.PublishedTable;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.BuiltInShots;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ShotDiagramTest {

    static Stream<Arguments> shotsOnTables() {
        List<Arguments> pairs = new ArrayList<>();
        for (Shot shot : BuiltInShots.all()) {
            for (PublishedTable table : PublishedTables.all()) {
                pairs.add(Arguments.of(shot.id(), table.id()));
            }
        }
        return pairs.stream();
    }

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    private static String draw(String shotId, String tableId) {
        PublishedTable table = PublishedTables.byId(tableId).orElseThrow();
        return new ShotDiagram(table.size(), table.pockets()).svg(BuiltInShots.byId(shotId), List.of());
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("shotsOnTables")
    void isWellFormedInsideItsFrameAndDescribesItself(String shotId, String tableId) throws Exception {
        String svg = draw(shotId, tableId);
        assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity").isEqualTo(draw(shotId, tableId));
        Element root = parsed(svg).getDocumentElement();
        assertThat(root.getAttribute("role")).isEqualTo("img");
        assertThat(text(root, "title")).startsWith(shotId);
        assertThat(text(root, "desc")).startsWith("Start x ");
        String[] frame = root.getAttribute("viewBox").split(" ");
        NodeList circles = root.getElementsByTagName("circle");
        for (int i = 0; i < circles.getLength(); i++) {
            Element circle = (Element) circles.item(i);
            assertThat(Double.parseDouble(circle.getAttribute("cx"))).isBetween(0.0, Double.parseDouble(frame[2]));
            assertThat(Double.parseDouble(circle.getAttribute("cy"))).isBetween(0.0, Double.parseDouble(frame[3]));
        }
    }

    private static String text(Element root, String tag) {
        return root.getElementsByTagName(tag).item(0).getTextContent();
    }

    /**
     * Source: the shot's definition and the mirror image by hand: from (1.27, 2) at 45° to the near rail at 3.18, to the
     * far rail at 7; a diamond is 100 units, the head rail's nose at 70, the far rail's nose at 70, y runs down.
     */
    @Test
    void drawsThePathWhereItIs() throws Exception {
        Element root = parsed(draw("rebound-45-ramp", "pool-9ft")).getDocumentElement();
        String[] points = ((Element) root.getElementsByTagName("polyline").item(0))
                .getAttribute("points")
                .split("[ ,]");
        double[] expected = {70 + 127, 470 - 200, 70 + 318, 470 - 9, 70 + 700, 470 - 391};
        for (int i = 0; i < expected.length; i++) {
            assertThat(Double.parseDouble(points[i])).isCloseTo(expected[i], within(0.06));
        }
        NodeList labels = root.getElementsByTagName("text");
        List<String> words = new ArrayList<>();
        for (int i = 0; i < labels.getLength(); i++) {
            words.add(labels.item(i).getTextContent());
        }
        assertThat(words).contains("45.0°", "far rail", "near rail", "head rail", "foot rail", "7");
    }

    @Test
    void laysMarkedAttemptsUnderThePath() throws Exception {
        TableSize table = TableSize.REFERENCE;
        List<TablePoint> attempt = List.of(table.point(1, 1), table.point(2, 0.09), table.point(3, 1));
        String svg = new ShotDiagram(table, PocketMouths.NONE)
                .svg(BuiltInShots.byId("rebound-45-ramp"), List.of(attempt, attempt));
        assertThat(parsed(svg)
                        .getDocumentElement()
                        .getElementsByTagName("polyline")
                        .getLength())
                .isEqualTo(3);
        assertThat(svg).contains("170,370 270,461 370,370");
    }

    @Test
    void escapesWhatAContributorWrote() throws Exception {
        Shot shot = BuiltInShots.byId("hop-drop");
        Shot named = new Shot(
                "<a&b>",
                shot.kind(),
                Optional.of("\"x\" < y"),
                shot.start(),
                shot.aim(),
                shot.rails(),
                shot.target(),
                shot.targetRail(),
                shot.approachAngleDeg(),
                shot.approachSpeedMps(),
                shot.delivery(),
                shot.keepConstant(),
                shot.howToLog());
        String svg = new ShotDiagram(TableSize.REFERENCE, PocketMouths.NONE).svg(named, List.of());
        assertThat(text(parsed(svg).getDocumentElement(), "title")).isEqualTo("<a&b>: \"x\" < y");
    }
}
