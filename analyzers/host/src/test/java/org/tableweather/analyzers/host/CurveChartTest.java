package org.tableweather.analyzers.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class CurveChartTest {
    private static final AnalysisRun TWELVE_ROOMS = DrawnRuns.withRooms(12, true);

    @Nested
    class Svg {
        @Test
        void marksEveryPointOfEveryRoomWithItsRoom() throws Exception {
            Map<String, Integer> points = new TreeMap<>();
            for (Element mark : roomPoints(parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.page())))) {
                points.merge(mark.getAttribute("data-room"), 1, Integer::sum);
            }

            assertThat(points).hasSize(12);
            assertThat(points.values()).as("five sessions in each room").containsOnly(5);
            assertThat(points).containsKey("club/room-11");
        }

        @Test
        void tellsEachPointInWords() throws Exception {
            Element first = roomPoints(parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.page())))
                    .get(0);

            assertThat(first.getTextContent())
                    .startsWith("room-0; relative humidity, %: 28.0; final rebound angle, deg from the normal: ");
        }

        @Test
        void carriesAxesWithUnitsTitleAndLegend() throws Exception {
            List<String> words = texts(parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.page())), "text");

            assertThat(words)
                    .contains(
                            "relative humidity, %",
                            "final rebound angle, deg from the normal",
                            "Final rebound angle and humidity, long-rail bank",
                            "12 rooms, 60 sessions, 1,200 attempts",
                            "mean of all rooms",
                            "a new room's true curve, 95 %",
                            "room-0",
                            "room-11");
        }

        @Test
        void scalesAndNamesItselfToAScreenReader() throws Exception {
            Element root =
                    parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.phone())).getDocumentElement();

            assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 360 540");
            assertThat(root.getAttribute("role")).isEqualTo("img");
            String[] labelled = root.getAttribute("aria-labelledby").split(" ");
            Element title = (Element) root.getElementsByTagName("title").item(0);
            Element description = (Element) root.getElementsByTagName("desc").item(0);
            assertThat(labelled).containsExactly(title.getAttribute("id"), description.getAttribute("id"));
            assertThat(description.getTextContent()).contains("0.9 deg tighter").contains("60 sessions");
        }

        @Test
        void startsWithItsRootSoThatItCanStandInAPage() {
            assertThat(CurveChart.svg(TWELVE_ROOMS, ChartSize.page()))
                    .startsWith("<svg ")
                    .doesNotContain("<!DOCTYPE")
                    .doesNotContain("<font")
                    .doesNotContain("base64");
        }

        @Test
        void isMarkedWhenTheDataAreInvented() {
            assertThat(CurveChart.svg(TWELVE_ROOMS, ChartSize.page())).contains("INVENTED DATA");
            assertThat(CurveChart.svg(DrawnRuns.withRooms(12, false), ChartSize.page()))
                    .doesNotContain("INVENTED");
        }

        @Test
        void givesTheSameBytesTwice() {
            assertThat(CurveChart.svg(TWELVE_ROOMS, ChartSize.page()))
                    .isEqualTo(CurveChart.svg(TWELVE_ROOMS, ChartSize.page()));
        }

        @Test
        void sharesNoIdWithTheSameCurveInAnotherSize() throws Exception {
            List<String> page = ids(parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.page())));
            List<String> phone = ids(parsed(CurveChart.svg(TWELVE_ROOMS, ChartSize.phone())));

            assertThat(page).isNotEmpty().doesNotHaveDuplicates().doesNotContainAnyElementsOf(phone);
        }

        @Test
        void drawsMoreThanTwelveRoomsInOneQuietStyle() throws Exception {
            Document many = parsed(CurveChart.svg(DrawnRuns.withRooms(30, false), ChartSize.page()));

            assertThat(roomPoints(many)).hasSize(150);
            assertThat(texts(many, "text")).contains("30 rooms").doesNotContain("room-0");
        }
    }

    @Test
    void drawsAPngWithTwoDotsPerPixel() throws Exception {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(CurveChart.png(TWELVE_ROOMS, ChartSize.phone())));

        assertThat(image.getWidth()).isEqualTo(720);
        assertThat(image.getHeight()).isEqualTo(1080);
        assertThat(CurveChart.png(TWELVE_ROOMS, ChartSize.phone()))
                .isEqualTo(CurveChart.png(TWELVE_ROOMS, ChartSize.phone()));
    }

    @Test
    void saysWhyThereIsNothingToDraw() {
        assertThatThrownBy(() -> CurveChart.svg(DrawnRuns.declined(), ChartSize.page()))
                .isInstanceOf(ChartUnavailable.class)
                .hasMessageContaining("too-few-records")
                .hasMessageContaining("1 session < 3");
    }

    @Test
    void namesTheRemedyWhenTheMachineHasNoFonts() {
        assertThatThrownBy(() -> PlotChart.withFonts(() -> {
                    throw new NoClassDefFoundError("Could not initialize class sun.font.SunFontManager");
                }))
                .isInstanceOf(ChartUnavailable.class)
                .hasMessageContaining("install fontconfig");
    }

    private static Document parsed(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<Element> roomPoints(Document svg) {
        return elements(svg, "*").stream()
                .filter(element -> element.getAttribute("class").equals("room-point"))
                .toList();
    }

    private static List<String> texts(Document svg, String tag) {
        return elements(svg, tag).stream()
                .map(element -> element.getTextContent().strip())
                .toList();
    }

    private static List<String> ids(Document svg) {
        return elements(svg, "*").stream()
                .map(element -> element.getAttribute("id"))
                .filter(id -> !id.isEmpty())
                .toList();
    }

    private static List<Element> elements(Document svg, String tag) {
        NodeList nodes = svg.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }
}
