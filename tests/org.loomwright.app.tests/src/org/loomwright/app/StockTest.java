// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.app.load.StockShelf;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.Shown;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Part;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.stock.Stock;
import org.loomwright.stock.StockFile;

/** The stock that is shipped: its text, what is read of it, and how a project sees it. */
class StockTest {

    private final SourceReader reader = Repository.reader();
    private final Stock stock = Stock.shipped();

    private List<Source> whole() {
        return stock.files().stream().map(file -> reader.read(Stock.PREFIX + file.name(),
                file.text().getBytes(StandardCharsets.UTF_8))).toList();
    }

    private static List<Part> parts(List<Source> sources) {
        return sources.stream().flatMap(source -> source.elements().stream())
                .flatMap(element -> ((Catalogue) element).parts().stream()).toList();
    }

    @Test
    void everyFileOfTheFolderIsListedAndCanonical() throws IOException {
        Path folder = Repository.root().resolve("bundles/org.loomwright.stock/src/org/loomwright/stock");
        Set<String> names = new TreeSet<>();
        stock.files().forEach(file -> names.add(file.name()));
        assertEquals(Repository.entries(folder).stream().map(path -> path.getFileName().toString())
                .filter(name -> name.endsWith(".loom")).toList(), List.copyOf(names));
        for (StockFile file : stock.files()) {
            assertEquals(Formatter.format(file.text()), file.text(), file.name());
            assertEquals(Files.readString(folder.resolve(file.name())), file.text());
        }
    }

    @Test
    void linesTellWherePartsStandAsTheParserDoes() {
        List<String> parsed = new ArrayList<>();
        for (Part part : parts(whole())) {
            Span span = part.span();
            parsed.add(part.name() + " like " + part.base().map(Object::toString).orElse("") + " " + span.file() + " "
                    + span.offset() + " to " + span.end());
        }
        List<String> scanned = stock.files().stream().flatMap(file -> file.entries().stream().map(entry ->
                entry.name() + " like " + entry.like() + " " + Stock.PREFIX + file.name() + " " + entry.start() + " to "
                        + entry.end())).toList();
        assertEquals(parsed, scanned);
        assertTrue(parsed.size() > 150, "parts: " + parsed.size());
        assertEquals(parsed.size(), stock.names().size(), "no two parts have one name");
    }

    @Test
    void aPartIsTheSameWhetherItIsReadAloneOrWithAllOthers() {
        StockShelf shelf = new StockShelf(reader);
        for (Part part : parts(whole())) {
            Set<String> bases = stock.withBases(Set.of(part.name().text()));
            List<Part> alone = parts(shelf.take(Set.of(part.name().text())));
            assertEquals(bases, new TreeSet<>(alone.stream().map(each -> each.name().text()).toList()));
            assertTrue(alone.contains(part), part.name().text());
        }
    }

    @Test
    void everyFigureHasASource() {
        List<String> without = new ArrayList<>();
        for (Part part : Project.link(whole()).parts().values()) {
            part.figures().stream().filter(fact -> fact.value().basis().isBlank())
                    .forEach(fact -> without.add(part.name() + " " + fact.value().kind()));
            part.sizes().stream().filter(size -> size.basis().isBlank())
                    .forEach(size -> without.add(part.name() + " " + size.size()));
            if (part.joins().stream().anyMatch(join -> join.through().isPresent())
                    && part.word(Part.WordKind.SOURCE).isEmpty()) {
                without.add(part.name() + " through");
            }
        }
        assertEquals(List.of(), without);
    }

    @Test
    void holdsForEveryVehicle() {
        for (Part part : parts(whole())) {
            assertTrue(Stream.concat(part.figures().stream(), part.words().stream())
                    .allMatch(fact -> fact.when() instanceof Expression.Always), part.name().text());
            assertTrue(part.joins().stream().allMatch(join -> join.when() instanceof Expression.Always));
        }
    }

    @Test
    void namesNoMaker() {
        Set<String> allowed = Set.of("SAE", "ISO", "IEC", "DIN", "USCAR-2", "UN");
        Set<String> capitals = new HashSet<>();
        stock.files().forEach(file -> java.util.regex.Pattern.compile("\\b[A-Z]{3,}[A-Z0-9-]*\\b").matcher(file.text())
                .results().forEach(match -> capitals.add(match.group())));
        capitals.removeAll(allowed);
        capitals.remove("PVC");
        assertEquals(Set.of(), capitals);
    }

    @Test
    void checksWithoutAFinding() {
        Report report = StandardRules.engine().check(Project.link(whole()), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
        assertEquals(List.of(), report.findings());
    }

    private static final String CAR = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                zone bay ambient 95 C
                place scuttle in bay
                place lamp in bay
                ground body
                device lampL is p21w at lamp on body
            }
            harness front "Front" of orrin {
                cable %s
                datum scuttle
                branch bL from scuttle to lamp 500 mm
                connector H1 on bL is bladeHousing2 {
                    terminal 1 is blade63Receptacle
                }
                circuit 1 "Side" BN {
                    wire a 18 ga from H1:1 to lampL:feed
                }
            }
            """;

    private static Report check(Project project) {
        return StandardRules.engine().check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    @Test
    void aProjectUsesItWithoutAWord() throws BadCall {
        Project project = TextProject.open(CAR.formatted("thinWall125")).project();
        assertEquals(List.of(), project.problems());
        assertEquals(List.of("stock:cables.loom", "stock:housings.loom", "stock:lamps.loom", "stock:terminals.loom"),
                project.stock().stream().map(Source::file).sorted().toList());
        assertEquals(Set.of("thinWall125", "p21w", "bladeHousing2", "blade63Receptacle"), project.parts().keySet());
        assertEquals(1, project.sources().size());
    }

    @Test
    void nothingOfItIsReadByAProjectWithItsOwnParts() throws BadCall {
        assertEquals(List.of(), TextProject.open(TextProject.SMALL).project().stock());
    }

    private static final String OWN = """
            catalogue shelf "Shelf" {
                cable thinWall125 "Ours" {
                    temperature 80 C
                }
                cable thicker "Ours" like thinWall125 {
                    size 16 ga diameter 3 mm source "measured"
                }
            }
            """;

    private static List<String> found(String text) throws BadCall {
        return check(TextProject.open(text).project()).findings().stream().map(Finding::rule).distinct().sorted()
                .toList();
    }

    @Test
    void aPartOfTheProjectThatCannotBeReadIsNotReplacedByTheStock() throws BadCall {
        String car = CAR.formatted("thinWall125");
        assertEquals(List.of("zone-too-hot-for-insulation"), found(car + OWN));
        String head = "cable thinWall125 \"Ours\" {";
        for (String damaged : List.of("wiresort thinWall125 \"Ours\" {", "cable: thinWall125 {",
                "cable \"Ours\" thinWall125 {", "thinWall125 \"Ours\" {", "cable the thinWall125 {")) {
            Project project = TextProject.open(car + OWN.replace(head, damaged)).project();
            List<Problem> problems = project.problems();
            assertEquals(2, problems.size(), () -> damaged + ": " + problems);
            Problem told = problems.stream().filter(each -> each.code().equals("part-not-read")).findFirst()
                    .orElseThrow();
            assertEquals("thinWall125", car.concat(OWN.replace(head, damaged)).substring(told.span().offset(),
                    told.span().end()));
            assertFalse(project.parts().containsKey("thinWall125"), damaged);
        }
        assertTrue(found(car + OWN.replace("catalogue shelf", "cataract shelf")).contains("part-not-read"));
    }

    @Test
    void aPartWhoseLineIsDamagedBehindItsNameKeepsWhatWasRead() throws BadCall {
        assertEquals(List.of("syntax", "zone-too-hot-for-insulation"),
                found(CAR.formatted("thinWall125") + OWN.replace("thinWall125 \"Ours\"", "thinWall125, \"Ours\"")));
    }

    @Test
    void aDamagedLineThatUsesThePartDoesNotHideIt() throws BadCall {
        Project project = TextProject.open(CAR.formatted("thinWall125 thinWall125") + OWN.replace(
                "cable thinWall125 \"Ours\" {\n        temperature 80 C\n    }\n", "")
                .replace("thicker \"Ours\" like", "thicker \"Ours\" \"Ours\" like")).project();
        assertTrue(project.parts().containsKey("thinWall125"));
        assertTrue(project.problems().stream().noneMatch(each -> each.code().equals("part-not-read")));
    }

    @Test
    void aMisspeltNameIsOffered() throws BadCall {
        Project project = TextProject.open(CAR.formatted("thinWal125")).project();
        assertEquals(List.of("did you mean \"thinWall125\"?"),
                project.problems().stream().map(problem -> problem.advice()).toList());
    }

    @Test
    void aFindingShowsItsLineOfTheStock() throws BadCall {
        OpenProject.Opened opened = TextProject.open("""
                platform orrin "Orrin 1200" {
                    supply 12 V negative ground
                    ground body
                    device dim is lamp1154 on body
                }
                """);
        String text = new CheckText(Palette.PLAIN).findings(opened, check(opened.project()),
                new Shown(true, true, true));
        String line = Stock.textOf("stock:lamps.loom").orElseThrow().lines()
                .filter(each -> each.contains("the dim filament 7 V")).findFirst().orElseThrow();
        assertTrue(text.contains(" stock:lamps.loom:"), text);
        assertTrue(text.contains(line.strip()), text);
    }

    @Test
    void aChangeThatIsOfferedIsNeverOneOfTheStock() throws BadCall {
        for (String cable : List.of("pvc80", "h4", "blade10", "thinWal125")) {
            Project project = TextProject.open(CAR.formatted(cable)).project();
            for (Finding finding : check(project).findings()) {
                assertTrue(finding.fixes().stream().flatMap(fix -> fix.edits().stream())
                        .noneMatch(edit -> edit.span().file().startsWith(Stock.PREFIX)), finding.sentence());
            }
        }
    }
}
