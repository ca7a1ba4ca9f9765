package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CurveCommandTest {
    @TempDir
    private Path directory;

    @Test
    void drawsEveryRoomAndBothBandsInTheTerminal() {
        Ran ran = Ran.with(InventedFolders.after("curve", "--ascii", "--data"));

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out())
                .contains("INVENTED DATA")
                .contains("relative humidity, %")
                .contains("final rebound angle, deg")
                .contains(". a new room's true curve, 95 %")
                .contains(": mean of all rooms, 95 %")
                .contains("l willow");
    }

    @Test
    void writesSvgWithFivePointsForEachRoomAndPng() throws Exception {
        Path svg = directory.resolve("curve.svg");
        Path png = directory.resolve("curve.png");

        Ran ran = Ran.with(InventedFolders.after("curve", "--svg", svg.toString(), "--png", png.toString(), "--data"));

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains("wrote " + svg).contains("wrote " + png);
        String text = Files.readString(svg);
        assertThat(text.split("data-room=\"invented-room-elm/elm\"", -1)).hasSize(1 + 5);
        assertThat(text.split("class=\"room-point\"", -1)).hasSize(1 + 60);
        assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void saysWhyThereIsNothingToDraw() {
        Ran ran = Ran.with("curve", "--data", InventedFolders.of("elm").toString(), "--set", "shot=kick-2-rail");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.err()).contains("there is no curve to draw");
    }

    @Test
    void namesAFolderThatCannotBeWrittenTo() {
        Path svg = directory.resolve("missing").resolve("curve.svg");

        Ran ran = Ran.with(InventedFolders.after("curve", "--svg", svg.toString(), "--data"));

        assertThat(ran.exitCode()).isNotEqualTo(ExitCodes.DONE);
        assertThat(ran.err()).contains(svg.toString());
    }
}
