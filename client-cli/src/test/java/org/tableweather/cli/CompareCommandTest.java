package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CompareCommandTest {

    @Test
    void setsARoomBesideThePoolWithItsPlace() throws Exception {
        Set<Integer> places = new HashSet<>();
        for (java.nio.file.Path folder : InventedFolders.all()) {
            String room = folder.getFileName().toString();
            Ran ran = Ran.with(InventedFolders.after("compare", room, "--json", "--data"));
            assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
            JsonNode json = AnalyzeCommandTest.parsed(ran.out());
            assertThat(json.path("room").asText()).isEqualTo("invented-room-" + room + "/" + room);
            places.add(json.path("departures").path(0).path("place").asInt());
        }

        assertThat(places).as("twelve rooms take twelve places").hasSize(12).contains(1, 12);
    }

    @Test
    void givesIntervalsOf95PercentAroundTheShrunkenDeparture() throws Exception {
        JsonNode departure = AnalyzeCommandTest.parsed(
                        Ran.with(InventedFolders.after("compare", "elm", "--json", "--data"))
                                .out())
                .path("departures")
                .path(0);

        double halfWidth =
                (departure.path("upper").asDouble() - departure.path("lower").asDouble()) / 2;
        // 1.959964 is the 97.5 % quantile of the normal distribution, as any table has it
        assertThat(halfWidth / departure.path("standardError").asDouble()).isEqualTo(1.959964, within(1e-6));
    }

    @Test
    void saysItInPlainWords() {
        assertThat(Ran.with(InventedFolders.after("compare", "cedar", "--data")).out())
                .startsWith("INVENTED DATA")
                .contains("beside a pool of 12 rooms")
                .containsPattern("95 % interval -?\\d+\\.\\d+ to -?\\d+\\.\\d+, place \\d+ of 12; ");
    }

    @Test
    void listsTheRoomsForAnUnknownOne() {
        Ran ran = Ran.with(InventedFolders.after("compare", "elmo", "--data"));

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("there is no room elmo").contains("invented-room-elm/elm");
    }

    @Test
    void asksForAPoolWhenThereIsOneRoomAlone() {
        Ran ran = Ran.with("compare", "--data", InventedFolders.of("elm").toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("no pool to compare it with").contains("--server URL");
    }
}
