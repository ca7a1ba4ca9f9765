package org.tableweather.schema.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jbibtex.BibTeXParser;
import org.jbibtex.ParseException;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;

class ReferencesTest {
    private static final Set<String> UNPUBLISHED = Set.of("common-practice", "from-memory");

    /** Source: CSL 1.0.2 specification, appendix III: the types of items. From memory. */
    private static final Set<String> CSL_TYPES =
            Set.of(("article article-journal article-magazine article-newspaper bill"
                            + " book broadcast chapter classic collection dataset document entry entry-dictionary"
                            + " entry-encyclopedia event figure graphic hearing interview legal_case legislation manuscript map"
                            + " motion_picture musical_score pamphlet paper-conference patent performance periodical"
                            + " personal_communication post post-weblog regulation report review review-book software song"
                            + " speech standard thesis treaty webpage")
                    .split(" "));

    private static Set<String> known() {
        return References.all().stream().map(Reference::key).collect(Collectors.toCollection(TreeSet::new));
    }

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

    /** All modules: source tags of code and tests, golden files. */
    @Test
    void knowsEveryKeyThatIsCited() throws IOException {
        assertThat(SourceKeys.cited(SourceKeys.repository()))
                .hasSizeGreaterThan(40)
                .allSatisfy(key -> assertThat(References.byKey(key)).as(key).isPresent());
    }

    @Test
    void hasNoSourceThatNothingCites() throws IOException {
        assertThat(SourceKeys.mentioned(SourceKeys.repository(), known())).containsExactlyElementsOf(known());
    }

    /** Whoever is not marked must say where it is published: a number, a body, a journal, a publisher, an address. */
    @Test
    void marksWhateverHasNoPublishedSource() {
        assertThat(References.cslJson()).allSatisfy(item -> {
            String kind = (String) ((Map<?, ?>) item.get("custom")).get("kind");
            List<?> authors = (List<?>) item.get("author");
            boolean body = authors.stream().anyMatch(author -> ((Map<?, ?>) author).containsKey("literal"));
            boolean published = body
                    || kind.equals("software")
                    || item.keySet().stream()
                            .anyMatch(Set.of("DOI", "ISBN", "number", "publisher", "container-title", "URL")::contains);
            assertThat(published || UNPUBLISHED.contains(kind)).as("%s", item).isTrue();
            assertThat((String) item.get("note")).as("what was seen of it").contains("; ");
            if (UNPUBLISHED.contains(kind)) {
                assertThat((String) item.get("note")).containsPattern("memory|no source|not seen");
            }
        });
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

    @Test
    void exportsBibtexThatAParserReads() throws ParseException {
        assertThat(new BibTeXParser()
                        .parse(new StringReader(References.bibtex()))
                        .getEntries())
                .hasSameSizeAs(References.all());
    }

    @Test
    void exportsCslJsonOfKnownTypes() {
        assertThat(References.cslJson()).hasSameSizeAs(References.all()).allSatisfy(item -> {
            assertThat(item).containsKeys("id", "type", "title", "author", "issued", "note", "custom");
            assertThat(CSL_TYPES).contains((String) item.get("type"));
        });
    }

    /** Source: the entry itself in references.bib. */
    @Test
    void exportsAPaperWithItsAuthorsAndPlace() {
        Map<String, Object> item = References.cslJson().stream()
                .filter(each -> each.get("id").equals("AlduchovEskridge1996"))
                .findFirst()
                .orElseThrow();

        assertThat(item)
                .containsEntry("type", "article-journal")
                .containsEntry("container-title", "Journal of Applied Meteorology")
                .containsEntry("volume", "35")
                .containsEntry("page", "601–609")
                .containsEntry("issued", Map.of("date-parts", List.of(List.of(1996))))
                .containsEntry(
                        "author",
                        List.of(
                                Map.of("family", "Alduchov", "given", "O. A."),
                                Map.of("family", "Eskridge", "given", "R. E.")));
        assertThat(item.get("DOI").toString()).startsWith("10.1175/");
    }
}
