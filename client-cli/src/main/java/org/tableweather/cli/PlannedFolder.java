package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;

/**
 * A contribution folder with every session and attempt of a plan in the order drawn, each an example to be replaced.
 *
 * @param report the plan
 * @param shots of the plan
 * @param name of the contributor
 * @param room what the room is called
 * @param licence SPDX id
 */
record PlannedFolder(PlanReport report, List<Shot> shots, String name, String room, String licence) {
    /** What is in it; people's files begin with README, which the checks leave alone. */
    static final List<String> FILES = List.of(
            "contribution.json", "trials.csv", "climate.csv", "README.txt", "README.sheet.html", "README.plan.json");

    /** Writes it: all of it, or nothing. */
    void write(Path folder) throws IOException {
        new FolderDraft(FILES, this::fill).write(folder);
    }

    private void fill(Path folder) throws IOException {
        Map<String, Shot> byId = shots.stream().collect(Collectors.toMap(Shot::id, Function.identity()));
        List<Session> sessions = report.sessions().stream().map(this::session).toList();
        Contribution contribution = NewFolder.contribution(room, room + ", planned sessions", name, licence, sessions);
        try (ContributionWriter writer = ContributionWriter.into(folder, contribution)) {
            for (int i = 0; i < sessions.size(); i++) {
                List<String> order = report.sessions().get(i).session().shots();
                Map<String, Integer> shotSoFar = new HashMap<>();
                for (int attempt = 0; attempt < order.size(); attempt++) {
                    String shot = order.get(attempt);
                    int ofShot = shotSoFar.merge(shot, 1, Integer::sum) - 1;
                    writer.write(ExampleRows.trial(sessions.get(i), byId.get(shot), attempt, ofShot));
                }
                ExampleRows.writeClimate(
                        writer,
                        sessions.get(i),
                        order.size(),
                        report.plan().tempC(),
                        report.sessions().get(i).session().rhPct());
            }
        }
        Files.writeString(folder.resolve("README.txt"), readme());
        Files.writeString(folder.resolve("README.sheet.html"), PlanSheet.of(report, shots, room));
        Files.writeString(folder.resolve("README.plan.json"), JsonText.ofSchema(report));
    }

    private Session session(PlanReport.Held held) {
        Optional<String> delivery =
                shots.stream().map(Shot::delivery).distinct().count() == 1
                        ? shots.get(0).delivery()
                        : Optional.empty();
        return NewFolder.session(
                "s" + held.session().number(),
                "visit-" + held.session().visit(),
                held.settledFrom(),
                held.startedAt(),
                delivery,
                "EXAMPLE: hold " + Figures.plain(held.session().rhPct()) + " %RH; replace the times and this note");
    }

    private String readme() throws IOException {
        try (InputStream template = PlannedFolder.class.getResourceAsStream("planned-folder.txt")) {
            String text = new String(template.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("{room}", room)
                    .replace("{seed}", Long.toString(report.seed()))
                    .replace("{sessions}", Integer.toString(report.sessions().size()))
                    .replace("{attempts}", Integer.toString(report.plan().attemptsPerSession()));
            Shot first = shots.get(0);
            return text + new NewFolder(first, 1, 1, name, room, licence).readme();
        }
    }
}
