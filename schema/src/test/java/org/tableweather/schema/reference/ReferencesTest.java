package org.tableweather.schema.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;

class ReferencesTest {

    @Test
    void givesEverySourceAKindAndACitation() {
        assertThat(References.all()).isNotEmpty().allSatisfy(reference -> {
            assertThat(References.KINDS).contains(reference.kind());
            assertThat(reference.citation()).isNotBlank().doesNotContain("{", "\\");
        });
    }

    @Test
    void knowsTheKeyOfEveryCheck() {
        assertThat(Checks.all())
                .extracting(Check::reference)
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }

    @Test
    void knowsTheKeyOfEverySourceTag() throws IOException {
        Set<String> keys = new TreeSet<>();
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            for (Path source :
                    sources.filter(path -> path.toString().endsWith(".java")).toList()) {
                Matcher tag = Pattern.compile("@source\\s+(\\S+)").matcher(Files.readString(source));
                while (tag.find()) {
                    keys.add(tag.group(1));
                }
            }
        }
        assertThat(keys)
                .isNotEmpty()
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }

    @Test
    void listsKeysInOrderWithoutRepeats() throws IOException {
        String bib = Files.readString(Path.of("src/main/resources/schema/v1/references.bib"));
        List<String> keys = Pattern.compile("(?m)^@\\w+\\{(\\w+),")
                .matcher(bib)
                .results()
                .map(match -> match.group(1))
                .toList();
        assertThat(keys).isSortedAccordingTo(String.CASE_INSENSITIVE_ORDER).doesNotHaveDuplicates();
    }
}
