// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.loomwright.harness.link.Draft.ALWAYS;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Wiring;

class ProjectTest {

    private static final Expression EARLY = new Expression.Compare("year", Relation.LE, "1965");
    private static final Expression LATE = new Expression.Compare("year", Relation.GE, "1966");
    private static final Expression FAN = new Expression.Choice("fan");

    private final Draft draft = new Draft();

    private Wiring drawing(String name, Expression when) {
        return draft.wiring(Wiring.Kind.DRAWING, name, when,
                List.of(draft.connector("J1", "socket3", ALWAYS), draft.connector("H1", "socket3", FAN)),
                List.of(draft.circuit("12", ALWAYS, draft.wire("a", "J1:1", "H1:1", FAN))));
    }

    @Test
    void aCleanProjectHasNoProblems() {
        assertEquals(List.of(), Draft.codes(Draft.link(draft.orrin(), draft.catalogue(), drawing("front64", EARLY))));
    }

    @Test
    void conditionsOfAWireAreThoseOfWireCircuitAndDrawing() {
        Project project = Draft.link(draft.orrin(), draft.catalogue(), drawing("front64", EARLY));
        WiringView front = project.wiring("front64").orElseThrow();
        // 4 years x 2 bodies x with or without fan = 16 vehicles; 1964 and 1965 are half of them, with fan a quarter
        assertEquals(BigInteger.valueOf(16), front.platform().vehicles().count());
        assertEquals(BigInteger.valueOf(8), front.when().count());
        assertEquals(BigInteger.valueOf(4), front.wires().getFirst().when().count());
        assertEquals(BigInteger.valueOf(4), front.connectors().get("H1").when().count());
    }

    @Test
    void aHarnessIsForTheVehiclesOfTheDrawingsItCovers() {
        Project project = Draft.link(draft.orrin(), draft.catalogue(), drawing("front64", EARLY),
                drawing("front66", LATE),
                draft.wiring(Wiring.Kind.HARNESS, "front", new Expression.Choice("saloon"), List.of(), List.of(),
                        "front64", "front66"));
        assertEquals(BigInteger.valueOf(8), project.wiring("front").orElseThrow().when().count());
        assertEquals(List.of("front64", "front66"), project.wiring("front").orElseThrow().covers());
    }

    @Test
    void theOrderOfElementsDoesNotMatter() {
        Wiring harness = draft.wiring(Wiring.Kind.HARNESS, "front", ALWAYS, List.of(), List.of(), "front64");
        Project project = Draft.link(harness, drawing("front64", EARLY), draft.catalogue(), draft.orrin());
        assertEquals(List.of(), Draft.codes(project));
        assertEquals(BigInteger.valueOf(8), project.wiring("front").orElseThrow().when().count());
    }

    @Test
    void endsAreResolvedToWhatTheyAre() {
        WireView wire = Draft.link(draft.orrin(), draft.catalogue(), drawing("front64", EARLY)).wiring("front64")
                .orElseThrow().wires().getFirst();
        assertEquals(new Node(Node.Kind.CAVITY, "front64", "J1", "1"), wire.from().getFirst().value());
        assertEquals("12a", wire.label());
        assertEquals("RD", wire.colours().getFirst().value().toString());
    }

    @Test
    void aMisspeltNameIsReportedOnceWithTheNearestOne() {
        Wiring wrong = draft.wiring(Wiring.Kind.DRAWING, "front64", ALWAYS,
                List.of(draft.connector("J1", "sokcet3", ALWAYS)), List.of());
        Project project = Draft.link(draft.orrin(), draft.catalogue(), wrong);
        assertEquals(List.of("name-unknown"), Draft.codes(project));
        Problem problem = project.problems().getFirst();
        assertEquals("there is no part named \"sokcet3\"", problem.message());
        assertEquals("did you mean \"socket3\"?", problem.advice());
        assertEquals("socket3", problem.edits().getFirst().text());
        assertEquals("sokcet3".length(), problem.span().length());
    }

    @Test
    void anUnknownChoiceInAConditionIsReported() {
        Project project = Draft.link(draft.orrin(), draft.catalogue(),
                drawing("front64", new Expression.Choice("salon")));
        assertEquals(List.of("condition-unknown-choice"), Draft.codes(project));
        assertEquals("did you mean \"saloon\"?", project.problems().getFirst().advice());
    }

    @Test
    void twoValuesForOneVehicleOverlapAndAreNamedWithTheVehicles() {
        var connector = new org.loomwright.harness.Connector(draft.name("J1"), "", Optional.empty(), Optional.empty(),
                List.of(new Fact<>(draft.ref("socket3"), LATE, draft.span()),
                        new Fact<>(draft.ref("socket4"), FAN, draft.span())),
                List.of(), List.of(), List.of(), ALWAYS, draft.span());
        var catalogue = new org.loomwright.harness.Catalogue(draft.name("parts"), "",
                List.of(draft.part(org.loomwright.harness.Part.Kind.HOUSING, "socket3"),
                        draft.part(org.loomwright.harness.Part.Kind.HOUSING, "socket4")), draft.span());
        Project project = Draft.link(draft.orrin(), catalogue,
                draft.wiring(Wiring.Kind.DRAWING, "front64", ALWAYS, List.of(connector), List.of()));
        assertEquals(List.of("facts-overlap"), Draft.codes(project));
        String message = project.problems().getFirst().message();
        assertTrue(message.contains("year >= 1966 and fan") && message.contains("4 of 16 vehicles"), message);
    }

    @Test
    void twoPlatformsOfOneNameAreReportedAndTheFirstStands() {
        Project project = Draft.link(draft.orrin(), draft.orrin(), draft.catalogue());
        assertEquals(List.of("name-twice"), Draft.codes(project));
        assertEquals(1, project.platforms().size());
    }

    @Test
    void aDrawingWithoutItsPlatformStillLinks() {
        Project project = Draft.link(draft.catalogue(), draft.wiring(Wiring.Kind.DRAWING, "front64", ALWAYS,
                List.of(), List.of()));
        assertEquals(List.of("name-unknown"), Draft.codes(project));
        assertTrue(project.wiring("front64").isPresent());
    }

    @Test
    void aHarnessCannotCoverAHarness() {
        Project project = Draft.link(draft.orrin(), draft.catalogue(),
                draft.wiring(Wiring.Kind.HARNESS, "a", ALWAYS, List.of(), List.of()),
                draft.wiring(Wiring.Kind.HARNESS, "b", ALWAYS, List.of(), List.of(), "a"));
        assertEquals(List.of("name-unknown"), Draft.codes(project));
    }

    @Test
    void aMateIsADeviceOrAConnectorOfANamedDrawing() {
        var plug = new org.loomwright.harness.Connector(draft.name("J1"), "", Optional.empty(), Optional.empty(),
                draft.facts(draft.ref("socket3")),
                draft.facts(new Ref("J7", "dash64", draft.span())), List.of(), List.of(), ALWAYS, draft.span());
        Project project = Draft.link(draft.orrin(), draft.catalogue(),
                draft.wiring(Wiring.Kind.DRAWING, "front64", ALWAYS, List.of(plug), List.of()),
                draft.wiring(Wiring.Kind.DRAWING, "dash64", ALWAYS,
                        List.of(draft.connector("J7", "socket3", ALWAYS)), List.of()));
        assertEquals(List.of(), Draft.codes(project));
        assertEquals(new ConnectorView.Mate("dash64", "J7", false), project.wiring("front64").orElseThrow()
                .connectors().get("J1").mates().getFirst().value());
    }

    @Test
    void aMistakeInTheConditionOfAWaiverIsReported() {
        var waiver = new org.loomwright.harness.Waiver(draft.name(""), draft.name("orphan-wire"), draft.ref("front64"),
                "12a", "measured", Optional.empty(), new Expression.Choice("salon"), draft.span());
        assertEquals(List.of("condition-unknown-choice"),
                Draft.codes(Draft.link(draft.orrin(), draft.catalogue(), drawing("front64", EARLY), waiver)));
    }

    @Test
    void aPlatformThatCannotBeCountedIsReportedOnceAndNotByEverythingThatRefersToIt() {
        Project project = new Linker(List.of(Draft.source(draft.tangled(24), draft.catalogue(),
                drawing("front64", EARLY),
                draft.wiring(Wiring.Kind.HARNESS, "front", ALWAYS, List.of(), List.of(), "front64"))), Shelf.EMPTY,
                20_000).link();
        assertEquals(List.of("too-many-combinations"), Draft.codes(project));
        assertEquals(Map.of(), project.wirings());
    }

    @Test
    void linkingGrowsLinearlyInConditionWork() {
        assertTrue(workFor(200) <= 11 * workFor(20), "decision nodes built must not grow faster than the wires");
    }

    private static long workFor(int wires) {
        Draft draft = new Draft();
        var list = new org.loomwright.harness.Circuit.Wire[wires];
        for (int i = 0; i < wires; i++) {
            list[i] = draft.wire("w" + i, "J1:1", "H1:1", i % 2 == 0 ? FAN : EARLY);
        }
        Project project = Draft.link(draft.orrin(), draft.catalogue(), draft.wiring(Wiring.Kind.DRAWING, "front64",
                ALWAYS, List.of(draft.connector("J1", "socket3", ALWAYS), draft.connector("H1", "socket3", ALWAYS)),
                List.of(draft.circuit("12", ALWAYS, list))));
        return project.platforms().get("orrin").vehicles().work().operations();
    }
}
