// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.harness.Problem;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.names.Names.Named;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.navigate.Occurrence;
import org.loomwright.ide.navigate.Rename;
import org.loomwright.ide.navigate.Target;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.quantity.Cancel;

/** From words to things and back, across the files of the Orrin. */
class NavigationTest {

    private static final String FRONT = "front-1964.loom";

    private final Bench orrin = Bench.orrin();

    private List<Target> definition(String file, String piece, int plus) {
        return Services.definition(orrin.moment(), file, orrin.offset(file, piece, plus));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "datum bulkhead             | 8  | PLACE     | orrin.loom",
        "of orrin fills             | 3  | PLATFORM  | orrin.loom",
        "fills frontLighting        | 8  | POSITION  | orrin.loom",
        "not coupe and              | 5  | CHOICE    | orrin.loom",
        "not late67                 | 5  | CHOICE    | orrin.loom",
        "cable pvc85                | 7  | PART      | catalogue.loom",
        "from leftWing to           | 6  | BREAKOUT  | front-1964.loom",
        "on bHeadL is               | 4  | RUN       | front-1964.loom",
        "mates J7 of dash64         | 7  | CONNECTOR | dash-1964.loom",
        "of dash64                  | 4  | DRAWING   | dash-1964.loom",
        "mates headLampL            | 8  | DEVICE    | orrin.loom",
        "via bStudL on body         | 15 | GROUND    | orrin.loom",
        "from J1:1 to S12           | 5  | CONNECTOR | front-1964.loom",
        "from J1:1 to S12           | 8  | PIN       | catalogue.loom",
        "to S12                     | 4  | SPLICE    | front-1964.loom",
        "to G1                      | 4  | STUD      | front-1964.loom"})
    void aWordLeadsToWhereItsThingIsDeclared(String piece, int plus, Symbol.Kind kind, String file) {
        List<Target> targets = definition(FRONT, piece.strip(), plus);
        assertEquals(1, targets.size(), targets.toString());
        assertEquals(kind, targets.getFirst().symbol().kind());
        assertEquals(file, targets.getFirst().name().file());
        String text = orrin.text(file);
        assertEquals(kind == Symbol.Kind.PIN ? "1" : targets.getFirst().symbol().name(), text.substring(
                targets.getFirst().name().offset(), targets.getFirst().name().end()));
    }

    @Test
    void aPartOfTheStockIsFoundInItsFile() {
        Bench bench = Bench.of("a.loom", "platform p {\n    years 1964 .. 1965\n    place box\n}\ndrawing d of p {\n"
                + "    cable thinWall125\n    datum box\n}\n");
        List<Target> targets = Services.definition(bench.moment(), "a.loom", bench.offset("a.loom", "thinWall", 2));
        assertEquals("stock:cables.loom", targets.getFirst().name().file());
        assertEquals("thinWall125 is a part of the stock; it keeps its name", Services.rename(bench.moment(),
                "a.loom", bench.offset("a.loom", "thinWall", 2), "thin", Cancel.NEVER).refusal());
    }

    /** Every reference of the example means something: the linker, which finds nothing wrong with it, is the judge. */
    @Test
    void everyReferenceOfTheExampleIsUnderstood() {
        List<String> lost = new ArrayList<>();
        for (var source : orrin.moment().project().sources()) {
            WordLines lines = orrin.moment().words(source.file());
            for (Line line : lines.lines()) {
                assertTrue(line.read(), source.file() + ": " + line);
                for (Word word : line.words()) {
                    boolean own = word.slot().target().equals("Member") && word.text().matches("[0-9]+")
                            || word.slot().target().equals("Axis") && word.text().equals("year")
                            || word.slot().target().equals("Device") && word.text().equals("engine");
                    if (word.slot().sort() == Sort.REFERENCE && !own
                            && orrin.moment().names().meaning(word, line, lines).isEmpty()) {
                        lost.add(source.file() + ":" + word);
                    }
                }
            }
        }
        assertEquals(List.of(), lost);
    }

    @Test
    void referencesAreAllWordsThatNameTheThingAndNoOthers() {
        List<Occurrence> references = Services.references(orrin.moment(), FRONT,
                orrin.offset(FRONT, "circuit 12 ", 8), Cancel.NEVER);
        assertTrue(references.stream().anyMatch(Occurrence::declares));
        List<Occurrence> splice = Services.references(orrin.moment(), FRONT, orrin.offset(FRONT, "to S12", 4),
                Cancel.NEVER);
        assertEquals(4, splice.size(), "declared once, used by three wires; other drawings have an S12 of their own");
        assertEquals(Set.of(FRONT), splice.stream().map(each -> each.span().file()).collect(Collectors.toSet()));
        assertEquals(splice, Services.highlights(orrin.moment(), FRONT, orrin.offset(FRONT, "to S12", 4)));
    }

    @Test
    void aSearchFindsTheClosestNameFirst() {
        List<Target> found = Services.search(orrin.moment(), "headlampl", Cancel.NEVER);
        assertEquals("headLampL", found.getFirst().symbol().name());
        assertTrue(found.stream().anyMatch(target -> target.symbol().name().equals("headlampLeft")));
        assertEquals(List.of(), Services.search(orrin.moment(), "nothingIsCalledThis", Cancel.NEVER));
        assertEquals(500, Services.search(orrin.moment(), "", Cancel.NEVER).size(), "bounded");
    }

    /** Renaming each of many things leaves a project without problems, in which the same words mean the same. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "orrin.loom         | place bulkhead         | 8",
        "orrin.loom         | upgrade halogen        | 10",
        "orrin.loom         | saloon, coupe          | 9",
        "orrin.loom         | break late67           | 8",
        "orrin.loom         | zone engineBay         | 6",
        "orrin.loom         | position frontLighting | 12",
        "orrin.loom         | device horn            | 8",
        "orrin.loom         | platform orrin         | 10",
        "front-1964.loom    | drawing front64        | 9",
        "front-1964.loom    | breakout leftWing      | 10",
        "front-1964.loom    | branch bHeadL          | 8",
        "front-1964.loom    | connector J1           | 11",
        "front-1964.loom    | splice S12             | 8",
        "front-1964.loom    | circuit 1              | 8",
        "front-1964.loom    | stud G1                | 6",
        "front-harness.loom | harness front          | 9",
        "front-harness.loom | circuit 1              | 8",
        "front-harness.loom | wire a                 | 5",
        "catalogue.loom     | housing bulkhead12Plug | 10"})
    void aRenamedThingIsRenamedEverywhere(String file, String piece, int plus) {
        int offset = orrin.offset(file, piece, plus);
        Named before = orrin.moment().names().at(file, offset).orElseThrow();
        String to = Character.isDigit(before.symbol().name().charAt(0)) ? "777" : "renamedThing";
        Rename.Renamed renamed = Services.rename(orrin.moment(), file, offset, to, Cancel.NEVER);
        assertEquals("", renamed.refusal());
        Bench after = Bench.orrin();
        Map<String, List<TextEdit>> edits = renamed.edits().stream()
                .collect(Collectors.groupingBy(edit -> edit.span().file(), TreeMap::new, Collectors.toList()));
        edits.keySet().forEach(name -> after.with(name, orrin.edited(name, renamed.edits())));
        assertEquals(List.of(), after.moment().project().problems().stream().map(Problem::message).toList());
        Set<String> places = new TreeSet<>();
        orrin.moment().names().all(before.symbol()).forEach(each -> places.add(each.span().file() + ":"
                + each.span().line()));
        Symbol now = new Symbol(before.symbol().kind(), before.symbol().owner(), to);
        Set<String> placesAfter = new TreeSet<>();
        after.moment().names().all(now).forEach(each -> placesAfter.add(each.span().file() + ":"
                + each.span().line()));
        assertEquals(places, placesAfter);
        assertFalse(places.isEmpty());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "splice S12      | 7  | J1        | the name J1 is taken by the connector J1 of front64 at front-1964.loom:26:15",
        "splice S12      | 7  | horn      | the name horn is taken by the device horn of orrin at orrin.loom:125:12",
        "splice S12      | 7  | two words | \"two words\" cannot be a name; a name is letters, digits and _",
        "splice S12      | 7  | from      | \"from\" cannot be a name; a name is letters, digits and _",
        "from J1:1       | 8  | 2         | a pin cannot be renamed here",
        "year <= 1967    | 1  | age       | there is no name here",
        "trunk main      | 1  | x         | there is no name here"})
    void aRenameThatWouldBreakSomethingIsRefused(String piece, int plus, String to, String why) {
        Rename.Renamed refused = Services.rename(orrin.moment(), FRONT, orrin.offset(FRONT, piece.strip(), plus), to,
                Cancel.NEVER);
        assertEquals(List.of(), refused.edits());
        assertEquals(why.replaceAll("orrin.loom:[0-9:]+", ""), refused.refusal().replaceAll("orrin.loom:[0-9:]+", ""));
    }
}
