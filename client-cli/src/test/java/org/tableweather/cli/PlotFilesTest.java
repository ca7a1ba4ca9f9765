package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlotFilesTest {

    @TempDir
    private Path directory;

    private Ran drawn(Path folder, String... more) {
        List<String> words = new ArrayList<>(List.of("analyze", "make-rate", "--plots", folder.toString()));
        words.addAll(Arrays.asList(more));
        words.add("--data");
        return Ran.with(InventedFolders.after(words.toArray(String[]::new)));
    }

    private static List<String> names(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void writesAnSvgAndAPngOfEveryPlotBesideTheAnswer() throws Exception {
        Path folder = directory.resolve("new").resolve("pictures");

        Ran ran = drawn(folder);

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out()).contains("multiplies the odds by");
        assertThat(ran.err()).contains("wrote " + folder.resolve("make-rate-curve.svg"));
        assertThat(names(folder))
                .containsExactly(
                        "make-rate-calibration.png",
                        "make-rate-calibration.svg",
                        "make-rate-curve.png",
                        "make-rate-curve.svg");
        assertThat(Files.readString(folder.resolve("make-rate-calibration.svg")))
                .startsWith("<svg ")
                .contains("expected to go in, %");
        assertThat(Files.readAllBytes(folder.resolve("make-rate-curve.png"))).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void replacesNothingUnlessTold() throws Exception {
        Path mine = Files.writeString(directory.resolve("make-rate-curve.png"), "mine");

        Ran refused = drawn(directory);

        assertThat(refused.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(refused.err()).contains(mine + " exists").contains("nothing was written", "--overwrite");
        assertThat(names(directory)).containsExactly("make-rate-curve.png");
        assertThat(mine).hasContent("mine");

        assertThat(drawn(directory, "--overwrite", "--phone").exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(names(directory)).hasSize(4);
        assertThat(Files.readString(directory.resolve("make-rate-curve.svg"))).contains("0 0 360 540");
    }

    @Test
    void saysWhyThereIsNothingToDraw() {
        Ran ran = drawn(directory.resolve("none"), "--set", "shot=none-such");

        assertThat(ran.exitCode()).isNotEqualTo(ExitCodes.DONE);
        assertThat(ran.err()).contains("there is nothing to draw", "none-such");
        assertThat(directory.resolve("none")).doesNotExist();
    }

    @Test
    void doesNotTakeAFileForAFolder() throws Exception {
        Path file = Files.writeString(directory.resolve("file"), "mine");

        assertThat(drawn(file).err()).contains(file + " is a file");
    }
}
