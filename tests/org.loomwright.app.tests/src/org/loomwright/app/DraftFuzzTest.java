// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.condition.Condition;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.Requirement;
import org.loomwright.fit.plan.HarnessPlanner;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/**
 * Random years of one harness, in which lamps come and go, move, and change pin, size, number and colour. Whatever
 * they are, the draft connects in each year what its drawing connects, at the same places, as thick or thicker, and
 * nothing else.
 */
class DraftFuzzTest {

    private static final int SEEDS = 60;
    private static final int YEARS = 3;
    private static final int LAMPS = 5;
    private static final List<String> SIZES = List.of("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2");
    private static final List<String> COLOURS = List.of("BN", "GN", "YE", "BU/RD", "WH/BK");

    private static String cars(Random random) {
        StringBuilder text = new StringBuilder("platform orrin {\n    years 1966 .. 1968\n    place bulkhead\n   "
                + " ground"
                + " body\n    position front\n    position facia\n");
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            text.append("    place p").append(lamp).append("\n    place q").append(lamp).append("\n    device lamp")
                    .append(lamp).append(" \"Lamp ").append(lamp).append("\"\n");
        }
        text.append("}\ncatalogue parts {\n    housing plug12 {\n        cavities 1..12\n    }\n    housing plug2 {\n"
                + "        cavities 1..2\n    }\n}\n");
        for (int year = 1966; year < 1966 + YEARS; year++) {
            text.append("drawing dash").append(year).append(" of orrin fills facia when year = ").append(year)
                    .append(" {\n    datum bulkhead\n    connector J7 at bulkhead is plug12\n}\n");
            drawing(random, year, text);
        }
        return text.toString();
    }

    private static void drawing(Random random, int year, StringBuilder text) {
        StringBuilder branches = new StringBuilder();
        StringBuilder connectors = new StringBuilder();
        StringBuilder circuits = new StringBuilder();
        List<Integer> pins = new ArrayList<>(List.of(1, 2, 3, 4, 5, 6, 7, 8));
        List<Integer> numbers = new ArrayList<>(List.of(10, 11, 12, 13, 14, 15));
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            if (lamp > 0 && random.nextInt(4) == 0) {
                continue;
            }
            int pin = random.nextInt(3) > 0 ? pins.removeFirst() : pins.remove(random.nextInt(pins.size()));
            int number = numbers.remove(random.nextInt(3) > 0 ? 0 : random.nextInt(numbers.size()));
            String place = (random.nextInt(5) == 0 ? "q" : "p") + lamp;
            branches.append("    branch b").append(lamp).append(" from t").append(lamp).append(" to ").append(place)
                    .append(' ').append(150 + random.nextInt(60)).append(" mm\n");
            connectors.append("    connector C").append(lamp).append(" on b").append(lamp).append(" is plug2"
                    + " mates lamp")
                    .append(lamp).append('\n');
            circuits.append("    circuit ").append(number).append(" \"Lamp ").append(lamp).append("\" ")
                    .append(COLOURS.get(random.nextInt(COLOURS.size()))).append(" {\n        wire a ")
                    .append(SIZES.get(random.nextInt(SIZES.size()))).append(random.nextBoolean() ? " from J1:" + pin
                            + " to C" + lamp + ":1" : " from C" + lamp + ":1 to J1:" + pin).append("\n    }\n");
        }
        text.append("drawing front").append(year).append(" of orrin fills front when year = ").append(year)
                .append(" {\n    tolerance ± 2 mm\n    datum bulkhead\n    trunk main {\n");
        for (int lamp = 0; lamp < LAMPS; lamp++) {
            text.append("        breakout t").append(lamp).append(" at ").append(200 + 150 * lamp + random.nextInt(40))
                    .append(" mm\n");
        }
        text.append("    }\n").append(branches).append("    connector J1 at bulkhead is plug12 mates J7 of dash")
                .append(year).append('\n').append(connectors).append(circuits).append("}\n");
    }

    /** What a wire connects in some vehicles: a cavity of the interface and what is mated where; with its area. */
    private record Joined(String cavity, String device, String place) {
    }

    private static List<Joined> joined(WiringView view, Condition vehicles, UnaryOperator<String> places,
            List<Double> areas) {
        List<Joined> all = new ArrayList<>();
        for (WireView wire : view.wires()) {
            if (wire.when().excludes(vehicles)) {
                continue;
            }
            String cavity = "";
            String device = "";
            String place = "";
            for (Node end : Stream.of(wire.from(), wire.to()).map(cases -> in(cases, vehicles)).toList()) {
                ConnectorView connector = view.connectors().get(end.element());
                ConnectorView.Mate mate = in(connector.mates(), vehicles);
                if (mate.device()) {
                    device = mate.element() + ":" + end.pin();
                    place = connector.connector().branch().map(Ref::text).map(places).orElse("");
                } else {
                    cavity = mate.element() + " of " + mate.owner() + ":" + end.pin();
                }
            }
            all.add(new Joined(cavity, device, place));
            areas.add(in(wire.sizes(), vehicles).areaMm2());
        }
        return all;
    }

    private static String place(WiringView view, String branch) {
        return view.run(branch).flatMap(Run::to).map(Ref::text).orElse("");
    }

    /** The place of a drawing that a branch of ours reaches, as the judge has it. */
    private static String reached(FitReport judged, String branch, WiringView drawing) {
        return judged.cells().stream().filter(each -> judged.problem().rows().get(each.row()).branch().equals(branch)
                && judged.problem().columns().get(each.column()).drawing().equals(drawing.name()))
                .map(each -> each.requirement() instanceof Requirement.Reach reach
                        ? place(drawing, reach.demand().factoryBranch()) : "").collect(Collectors.joining(" and "));
    }

    /** The one value that holds in some vehicles. */
    private static <T> T in(List<Case<T>> cases, Condition vehicles) {
        List<Case<T>> here = cases.stream().filter(each -> !each.when().excludes(vehicles)).toList();
        assertEquals(1, here.size(), here.toString());
        return here.getFirst().value();
    }

    @Test
    void eachYearIsConnectedAsItsDrawingHasIt() throws BadCall {
        int planned = 0;
        int partial = 0;
        int one = 0;
        int two = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            Project project = TextProject.open(cars(new Random(seed))).project();
            assertEquals(List.of(), project.problems(), "seed " + seed);
            DraftHarness.Drafted drafted = new DraftHarness(Repository.reader(), new PlanHarness(Repository.reader(),
                    new HarnessPlanner(), new ChainJudge(), FitDefaults.usual())).draft(project, List.of("front1966",
                            "front1967", "front1968"), "ours", Cancel.NEVER, Progress.NONE);
            partial += drafted.draft().text().contains("cap ") ? 1 : 0;
            if (drafted.planned().text().isEmpty()) {
                continue;
            }
            planned++;
            one += drafted.text().text().contains(": one branch that reaches each place; ") ? 1 : 0;
            two += drafted.text().text().contains(": one branch to each place; ") ? 1 : 0;
            assertTrue(drafted.planned().isWhole(), "the judge accepts it, seed " + seed);
            List<Source> sources = new ArrayList<>(project.everySource());
            sources.add(drafted.planned().text().get());
            Project with = Project.link(sources);
            assertEquals(List.of(), with.problems(), "seed " + seed);
            WiringView ours = with.wiring("ours").orElseThrow();
            for (int year = 1966; year < 1966 + YEARS; year++) {
                WiringView theirs = with.wiring("front" + year).orElseThrow();
                List<Double> needed = new ArrayList<>();
                List<Double> made = new ArrayList<>();
                FitReport judged = drafted.planned().judged().orElseThrow();
                List<Joined> expected = joined(theirs, theirs.when(), branch -> place(theirs, branch), needed);
                List<Joined> found = joined(ours, theirs.when(), branch -> reached(judged, branch, theirs), made);
                String name = "seed " + seed + ", " + year + ": " + found;
                assertEquals(expected.size(), found.size(), name);
                for (int i = 0; i < expected.size(); i++) {
                    int same = found.indexOf(expected.get(i));
                    assertTrue(same >= 0, name + " lacks " + expected.get(i));
                    assertTrue(made.get(same) >= needed.get(i), name);
                }
            }
            assertEquals(List.of(), StandardRules.engine().check(with, Settings.TIMELESS, Cancel.NEVER, Progress.NONE)
                    .findings().stream().filter(each -> each.severity() == Severity.ERROR
                            && each.place().span().file().equals("ours.loom")).map(each -> each.rule() + " "
                                    + each.sentence()).toList(), "seed " + seed);
        }
        assertTrue(one > 2 && two > 2, one + " with one branch to several places, " + two + " with one to each");
        assertTrue(planned > SEEDS / 2 && partial > SEEDS / 2, planned + " planned, " + partial + " with caps");
    }
}
