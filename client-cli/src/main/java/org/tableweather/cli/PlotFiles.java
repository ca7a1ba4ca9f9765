package org.tableweather.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.PlotChart;
import org.tableweather.analyzers.spi.Plot;

/** Every plot of an analysis as files {@code ANALYZER-PLOT.svg} and {@code .png}: all of them, or none. */
final class PlotFiles {

    private final Path folder;
    private final Map<Path, byte[]> pictures = new LinkedHashMap<>();

    /**
     * Draws them, and writes nothing yet.
     *
     * @param run with an answer
     * @param folder that they shall be in
     * @param size of the paper
     */
    PlotFiles(AnalysisRun run, Path folder, ChartSize size) {
        this.folder = folder;
        for (Plot plot : PlotChart.plots(run)) {
            String name = run.info().id() + "-" + plot.id();
            pictures.put(
                    folder.resolve(name + ".svg"),
                    PlotChart.svg(run, plot, size).getBytes(StandardCharsets.UTF_8));
            pictures.put(folder.resolve(name + ".png"), PlotChart.png(run, plot, size));
        }
    }

    /**
     * Writes them, each under another name first, so that no reader finds half a picture.
     *
     * @param overwrite whether pictures of the same names may be replaced
     * @throws Failure when there are such, and they may not
     */
    List<Path> write(boolean overwrite) throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Failure.usage(folder + " is a file", "name a folder, or one that does not exist yet");
        }
        List<Path> standing = pictures.keySet().stream().filter(Files::exists).toList();
        if (!overwrite && !standing.isEmpty()) {
            throw Failure.usage(
                    standing.get(0) + " exists"
                            + (standing.size() > 1 ? ", and " + (standing.size() - 1) + " more" : "")
                            + "; nothing was written",
                    "name another folder, or replace them with --overwrite");
        }
        Files.createDirectories(folder);
        for (Map.Entry<Path, byte[]> picture : pictures.entrySet()) {
            write(picture.getKey(), picture.getValue());
        }
        return List.copyOf(pictures.keySet());
    }

    private void write(Path file, byte[] picture) throws IOException {
        Path part = Files.createTempFile(folder, ".picture", ".part");
        try {
            Files.write(part, picture);
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(part);
        }
    }
}
