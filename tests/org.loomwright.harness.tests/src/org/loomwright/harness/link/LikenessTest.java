// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.Figure;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Part.Kind;
import org.loomwright.harness.Part.Pin;
import org.loomwright.harness.Part.Size;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Unit;

/** Parts that are like others, of the project and of the shelf. */
class LikenessTest {

    private final Draft draft = new Draft();

    private static Fact<Figure> amps(Draft draft, String amps) {
        Figure figure = new Figure(FigureKind.RATING, Quantity.of(new BigDecimal(amps), Unit.A), Optional.empty(), "");
        return new Fact<>(figure, Draft.ALWAYS, draft.span());
    }

    private Part part(Kind kind, String name, String like, List<Fact<Figure>> figures, List<Size> sizes,
            String... pins) {
        return new Part(kind, draft.name(name), "", like.isEmpty() ? Optional.empty() : Optional.of(draft.ref(like)),
                figures, List.of(), sizes, Stream.of(pins).map(pin -> new Pin(draft.name(pin), "")).toList(), List.of(),
                List.of(), draft.span());
    }

    private Part fuse(String name, String like, String... amps) {
        return part(Kind.FUSE, name, like, Stream.of(amps).map(each -> amps(draft, each)).toList(), List.of());
    }

    private Size size(String ga, String mm) {
        Quantity diameter = Quantity.of(new BigDecimal(mm), Unit.MM);
        return new Size(ConductorSize.sae(ga), Optional.of(diameter), Optional.empty(), "", draft.span());
    }

    private Catalogue catalogue(Part... parts) {
        return new Catalogue(draft.name("parts"), "", List.of(parts), draft.span());
    }

    /** A shelf that notes what is taken from it. */
    private record Noted(List<Part> parts, List<Set<String>> taken) implements Shelf {

        @Override
        public Set<String> names() {
            return Set.copyOf(parts.stream().map(part -> part.name().text()).toList());
        }

        @Override
        public List<Source> take(Set<String> names) {
            taken.add(names);
            return List.of(new Source("stock:a.loom", "", List.of(new Catalogue(parts.getFirst().name(), "", parts,
                    parts.getFirst().span())), List.of()));
        }
    }

    private Project link(Shelf shelf, Part... parts) {
        return Project.link(List.of(Draft.source(catalogue(parts))), shelf);
    }

    private static List<String> amps(Project project, String part) {
        return project.parts().get(part).figures().stream().map(each -> each.value().from().toString()).toList();
    }

    @Test
    void aRowOfTheSameSizeIsReplacedAndTheOthersStay() {
        Project project = Draft.link(catalogue(
                part(Kind.CABLE, "thin", "", List.of(), List.of(size("18", "2.2"), size("16", "2.4"))),
                part(Kind.CABLE, "ours", "thin", List.of(), List.of(size("14", "2.7"), size("18", "2.3")))));
        assertEquals(List.of("18 ga 2.3 mm", "16 ga 2.4 mm", "14 ga 2.7 mm"), project.parts().get("ours").sizes()
                .stream().map(row -> row.size() + " " + row.diameter().orElseThrow()).toList());
        assertEquals(List.of("2.2 mm", "2.4 mm"), project.parts().get("thin").sizes().stream()
                .map(row -> row.diameter().orElseThrow().toString()).toList());
    }

    @Test
    void figuresOfAKindAreReplacedTogetherAndPinsByName() {
        Project project = Draft.link(catalogue(
                part(Kind.RELAY, "a", "", List.of(amps(draft, "30"), amps(draft, "20")), List.of(), "30", "87"),
                part(Kind.RELAY, "b", "a", List.of(amps(draft, "40")), List.of(), "87", "87a"),
                part(Kind.RELAY, "c", "b", List.of(), List.of())));
        assertEquals(List.of("40 A"), amps(project, "c"));
        assertEquals(List.of("30", "87", "87a"),
                project.parts().get("c").pins().stream().map(pin -> pin.name().text()).toList());
        assertEquals(List.of(), Draft.codes(project));
    }

    @Test
    void aCircleIsOneProblemAndItsPartsKeepWhatTheyState() {
        Project project = Draft.link(catalogue(fuse("outside", "b"), fuse("a", "b", "1"), fuse("b", "c", "2"),
                fuse("c", "a")));
        assertEquals(List.of("like-in-circle"), Draft.codes(project));
        assertEquals("parts are like each other in a circle: a like b like c like a",
                project.problems().getFirst().message());
        assertEquals(List.of("2 A"), amps(project, "outside"));
        assertEquals(List.of("1 A"), amps(project, "a"));
        assertEquals(List.of(), amps(project, "c"));
    }

    @Test
    void anotherKindAndItselfAndNothingAreProblems() {
        Project project = Draft.link(catalogue(fuse("a", "a"), fuse("b", "lamp"), fuse("c", "lmap"),
                part(Kind.LAMP, "lamp", "", List.of(), List.of())));
        assertEquals(List.of("like-itself", "like-another-kind", "name-unknown"), Draft.codes(project));
        assertEquals("did you mean \"lamp\"?", project.problems().getLast().advice());
    }

    @Test
    void aPartOfTheProjectHidesThatOfTheShelfAndMayBuildOnIt() {
        Noted shelf = new Noted(List.of(fuse("blade10", "", "10"), fuse("blade15", "blade10", "15"),
                fuse("blade10b", "blade10")), new ArrayList<>());
        Project project = link(shelf, fuse("blade10", "blade10", "9"), fuse("mine", "blade10"),
                fuse("other", "blade10b"));
        assertEquals(List.of(), Draft.codes(project));
        assertEquals(List.of("9 A"), amps(project, "blade10"));
        assertEquals(List.of("9 A"), amps(project, "mine"));
        assertEquals(List.of("10 A"), amps(project, "other"), "parts of the shelf build on the shelf");
        assertEquals(List.of(Set.of("blade10", "blade10b")), shelf.taken());
        assertEquals(List.of("stock:a.loom"), project.stock().stream().map(Source::file).toList());
    }

    @Test
    void nothingIsTakenFromTheShelfThatTheProjectHas() {
        Noted shelf = new Noted(List.of(fuse("blade10", "", "10")), new ArrayList<>());
        Project project = link(shelf, fuse("blade10", "", "9"), fuse("mine", "blade10"));
        assertEquals(List.of(), shelf.taken());
        assertEquals(List.of(), project.stock());
    }

    @Test
    void aMisspeltNameOfTheShelfIsOffered() {
        Noted shelf = new Noted(List.of(fuse("glass30x6", "", "10")), new ArrayList<>());
        Problem problem = link(shelf, fuse("mine", "glas30x6")).problems().getFirst();
        assertEquals("did you mean \"glass30x6\"?", problem.advice());
        assertEquals("glass30x6", problem.edits().getFirst().text());
        assertTrue(link(shelf, fuse("mine", "nothing")).problems().getFirst().advice()
                .endsWith("the stock has none of that name either"));
    }

    @Test
    void aChainOfTenThousandIsRead() {
        List<Part> parts = new ArrayList<>(List.of(fuse("p0", "", "1")));
        for (int i = 1; i < 10_000; i++) {
            parts.add(fuse("p" + i, "p" + (i - 1)));
        }
        Project project = Draft.link(catalogue(parts.reversed().toArray(Part[]::new)));
        assertEquals(List.of("1 A"), amps(project, "p9999"));
    }
}
