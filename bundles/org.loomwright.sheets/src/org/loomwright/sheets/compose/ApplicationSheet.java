// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitStatus;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Finding;
import org.loomwright.sheets.content.Jumper;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The application and carry-over chart: which vehicle takes what, what of the old becomes what of ours. */
final class ApplicationSheet {

    private final Order order;
    private final List<Block> blocks = new ArrayList<>();
    private final List<Row> data = new ArrayList<>();

    private ApplicationSheet(Order order) {
        this.order = order;
    }

    static Document of(Order order) {
        ApplicationSheet sheet = new ApplicationSheet(order);
        sheet.vehicles();
        sheet.addOns();
        order.harnesses().forEach(sheet::carryOver);
        order.harnesses().forEach(sheet::reuse);
        return new Document(order.name() + "-application", "Application and carry-over chart",
                order.title() + " (" + order.name() + ")", false, sheet.blocks,
                List.of(new Grid("carry-over", Tables.columns("harness", "drawing", "old number", "old colour",
                        "old terminals", "our circuit", "our colour", "our legends", "vehicles"), sheet.data)));
    }

    private void vehicles() {
        blocks.add(new Block.Heading("Which vehicle"));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            List<Jumper> jumpers = Jumper.of(order.project(), harness);
            Condition rest = harness.vehicles();
            for (String name : harness.view().covers()) {
                Optional<WiringView> drawing = order.project().wiring(name);
                Condition when = drawing.map(each -> each.when().and(harness.vehicles()))
                        .orElse(order.platform().vehicles().none());
                if (!when.isNever()) {
                    rest = rest.minus(when);
                    rows.add(Row.of(Words.of(when) + " (" + Words.count(when) + ")", drawing.orElseThrow().wiring()
                            .title() + " (" + name + ")", harness.title() + " (" + harness.name() + ")",
                            addOns(when), jumpers(jumpers, when), verdict(harness, name, when, jumpers)));
                }
            }
            if (!rest.isNever() && !harness.view().covers().isEmpty()) {
                rows.add(Row.of(Words.of(rest) + " (" + Words.count(rest) + ")", "", "", "", "",
                        "not covered, because no drawing that " + harness.name() + " covers is for them"));
            } else if (harness.view().covers().isEmpty()) {
                rows.add(Row.of(Words.of(harness.vehicles()) + " (" + Words.count(harness.vehicles()) + ")", "adds to"
                        + " what is there", harness.title() + " (" + harness.name() + ")",
                        addOns(harness.vehicles()), jumpers(jumpers, harness.vehicles()), "covers no drawing"));
            }
        }
        Condition sold = sold();
        others(sold.minus(order.vehicles()), "covered by this " + (order.kit().isPresent() ? "kit" : "harness")
                + ", but not asked for: these sheets are for other vehicles", rows);
        others(order.platform().vehicles().all().minus(sold), "not covered, because the " + (order.kit().isPresent()
                ? "kit is not for them" : "harness is not for them"), rows);
        blocks.add(new Grid("vehicles", Tables.columns("Vehicles", "In place of", "Harness", "Add-ons", "Jumper",
                "Fit"), rows));
    }

    /** The vehicles that the kit or the harness is for, whether they were asked for or not. */
    private Condition sold() {
        Condition harnesses = order.platform().vehicles().anyOf(order.harnesses().stream()
                .map(each -> each.view().when()).toList());
        return order.kit().map(kit -> order.platform().vehicles().resolve(kit.when()).condition().and(
                order.platform().vehicles().anyOf(kit.contents().stream().map(each -> order.project().wiring(
                each.item().text())).flatMap(Optional::stream).map(WiringView::when).toList()))).orElse(harnesses);
    }

    private static void others(Condition vehicles, String why, List<Row> rows) {
        if (!vehicles.isNever()) {
            rows.add(Row.of(Words.of(vehicles) + " (" + Words.count(vehicles) + ")", "", "", "", "", why));
        }
    }

    /** The jumpers of some vehicles; of those that only some of them have, which. */
    private static String jumpers(List<Jumper> jumpers, Condition vehicles) {
        List<String> all = new ArrayList<>();
        for (Jumper jumper : jumpers) {
            Condition when = jumper.when().and(vehicles);
            if (!when.isNever()) {
                String words = Words.of(when, vehicles);
                all.add(jumper.label() + " on " + String.join(", ", new TreeSet<>(jumper.connectors()))
                        + (words.equals("all") ? "" : " when " + words));
            }
        }
        return all.isEmpty() ? "none" : String.join("; ", all);
    }

    /** Names of the kits that some vehicles can have on top of this one. */
    private String addOns(Condition vehicles) {
        List<String> all = order.project().kits().values().stream().filter(this::isAddOn).filter(kit -> !order
                .platform().vehicles().resolve(kit.when()).condition().excludes(vehicles))
                .map(kit -> kit.name().text()).toList();
        return all.isEmpty() ? "none" : String.join(", ", all);
    }

    private boolean isAddOn(Kit kit) {
        return kit.needs().filter(need -> need.kit().text().equals(order.name())).isPresent();
    }

    private String verdict(LaidHarness harness, String drawing, Condition vehicles, List<Jumper> jumpers) {
        FitReport report = order.fits().get(harness.name());
        if (report == null) {
            return "not judged";
        }
        Set<String> failures = new TreeSet<>(new NaturalOrder());
        Set<String> accepted = new TreeSet<>(new NaturalOrder());
        Set<String> longer = new TreeSet<>(new NaturalOrder());
        boolean open = false;
        for (int row = 0; row < report.problem().rows().size(); row++) {
            Optional<FitStatus> status = report.worst(row, drawing).map(each -> each.status());
            String branch = report.problem().rows().get(row).branch();
            if (status.filter(FitStatus.TOO_SHORT::equals).isPresent() && jumpers.stream().anyMatch(each ->
                    each.branches().contains(branch) && vehicles.implies(each.when()))) {
                longer.add(branch);
            } else if (status.filter(FitStatus::isFailure).isPresent()) {
                String what = branch + " " + status.get().words();
                Optional<String> reason = acceptance(harness.name() + ":" + branch, rule(status.get()), vehicles);
                reason.ifPresentOrElse(each -> accepted.add(what + " (" + each + ")"), () -> failures.add(what));
            }
            open |= status.filter(each -> each == FitStatus.NOT_PROVED).isPresent();
        }
        if (!failures.isEmpty()) {
            return "not covered, because " + String.join(", ", failures);
        }
        if (!longer.isEmpty()) {
            return "covered with a jumper on " + String.join(", ", longer);
        }
        String covered = open || report.problem().unjudged().contains(drawing) ? "covered; fit not proved" : "covered";
        return accepted.isEmpty() ? covered : covered + "; accepted: " + String.join(", ", accepted);
    }

    /** The rule that objects to a branch that does not fit. */
    private static String rule(FitStatus status) {
        return switch (status) {
            case TOO_LONG -> "excess-too-great";
            case DOUBLES_BACK -> "runs-back-too-far";
            case TOO_LONG_TO_PARK -> "too-long-to-park";
            default -> "place-not-reached";
        };
    }

    /** Why somebody accepted what a rule says of a branch in some vehicles; empty where nobody did for all of them. */
    private Optional<String> acceptance(String element, String rule, Condition vehicles) {
        List<Finding> said = order.findings().stream().filter(each -> each.rule().equals(rule)
                && each.element().equals(element) && each.affected().flatMap(Finding.Affected::condition)
                .filter(when -> when.excludes(vehicles)).isEmpty()).toList();
        return said.isEmpty() || said.stream().anyMatch(each -> each.acceptance().isEmpty()) ? Optional.empty()
                : Optional.of(String.join("; ", new TreeSet<>(said.stream()
                        .map(each -> each.acceptance().orElseThrow().reason()).toList())));
    }

    private void addOns() {
        List<Row> rows = new ArrayList<>();
        for (Kit kit : order.project().kits().values()) {
            boolean needed = isAddOn(kit);
            Condition when = order.platform().vehicles().resolve(kit.when()).condition().and(order.vehicles());
            if (needed && !when.isNever()) {
                rows.add(Row.of(kit.title() + " (" + kit.name() + ")", kit.revision(), Words.of(when,
                        order.vehicles())));
            }
        }
        order.kit().flatMap(Kit::needs).ifPresent(need -> rows.add(Row.of("needs " + need.kit().text(),
                need.revision() + (need.orLater() ? " or later" : ""), "all")));
        blocks.add(new Block.Heading("Add-ons"));
        if (rows.isEmpty()) {
            blocks.add(new Block.Words("None: no kit of this project adds to it, and it needs no other."));
        } else {
            blocks.add(new Grid("add-ons", Tables.columns("Kit", "Revision", "Vehicles"), rows));
        }
    }

    private void carryOver(LaidHarness harness) {
        List<Row> rows = new ArrayList<>();
        for (WiringView.CircuitView circuit : harness.view().circuits()) {
            for (Circuit.Origin origin : circuit.circuit().origins()) {
                Optional<WiringView> drawing = order.project().wiring(origin.drawing().text());
                Condition when = circuit.when().and(drawing.map(WiringView::when).orElse(harness.vehicles()))
                        .and(harness.vehicles());
                if (when.isNever()) {
                    continue;
                }
                List<Piece> pieces = harness.pieces().stream().filter(each -> each.circuit()
                        .equals(circuit.circuit().name().text()) && !each.when().excludes(when)).toList();
                String colour = pieces.stream().map(Piece::colour).findFirst().orElse("");
                String legends = String.join(", ", new TreeSet<>(pieces.stream().map(Piece::legend).toList()));
                String old = origin.colour().map(Colour::toString).orElse("");
                String terminals = drawing.map(each -> terminals(each, origin.number())).orElse("");
                String vehicles = harness.words(when);
                rows.add(Tables.row(Cell.of(origin.drawing().text()), Cell.of(origin.number()), Cell.colour(old),
                        Cell.of(terminals), Cell.of(circuit.circuit().name() + " " + circuit.circuit().title()),
                        Cell.colour(colour), Cell.of(legends), Cell.of(vehicles)));
                data.add(Row.of(harness.name(), origin.drawing().text(), origin.number(), old, terminals,
                        circuit.circuit().name().text(), colour, legends, vehicles));
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new Block.Heading("Old to new: " + harness.title() + " (" + harness.name() + ")"));
            blocks.add(new Grid("old to new", Tables.columns("Drawing", "Old number", "Old colour", "Old ends",
                    "Our circuit", "Our colour", "Our legends", "Vehicles"), rows));
        }
    }

    /** Where the factory's circuit of that number ended, with the terminals where the drawing states them. */
    private static String terminals(WiringView drawing, String number) {
        Set<String> ends = new TreeSet<>(new NaturalOrder());
        for (WireView wire : drawing.wires()) {
            if (wire.circuit().name().text().equals(number)) {
                for (List<Case<Node>> side : List.of(wire.from(), wire.to())) {
                    side.stream().map(Case::value).filter(each -> each.kind() != Node.Kind.SPLICE)
                            .forEach(each -> ends.add(each.label() + terminal(drawing, each)));
                }
            }
        }
        return String.join(", ", ends);
    }

    private static String terminal(WiringView drawing, Node node) {
        ConnectorView connector = node.kind() == Node.Kind.CAVITY ? drawing.connectors().get(node.element()) : null;
        return connector == null ? "" : connector.connector().cavities().stream()
                .filter(each -> each.kind() == CavityKind.TERMINAL && each.cavity().text().equals(node.pin()))
                .map(each -> " " + each.value().text()).findFirst().orElse("");
    }

    private void reuse(LaidHarness harness) {
        List<Row> rows = new ArrayList<>();
        Set<String> boxed = new TreeSet<>();
        order.kit().ifPresent(kit -> kit.contents().forEach(each -> boxed.add(each.item().text())));
        for (DeviceView device : order.platform().devices().values()) {
            List<String> ends = new ArrayList<>();
            harness.view().connectors().values().stream().filter(each -> each.mates().stream().anyMatch(mate ->
                    mate.value().device() && mate.value().element().equals(device.name())
                            && !mate.when().excludes(harness.vehicles()))).forEach(each -> ends.add(each.name()));
            harness.pieces().stream().flatMap(each -> each.ends().stream()).map(PieceEnd::node)
                    .filter(each -> each.kind() == Node.Kind.PIN && each.element().equals(device.name())
                            && !harness.view().devices().containsKey(each.element()))
                    .map(Node::label).distinct().forEach(ends::add);
            for (Case<org.loomwright.harness.Part> part : device.parts()) {
                Condition when = part.when().and(device.when()).and(harness.vehicles());
                if (!ends.isEmpty() && !when.isNever()) {
                    rows.add(Row.of(device.device().title() + " (" + device.name() + ")", part.value().title(),
                            String.join(", ", ends), boxed.contains(part.value().name().text()) ? "from the box"
                                    : "re-use what is in the car", harness.words(when)));
                }
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new Block.Heading("What stays, what is new: " + harness.title()));
            blocks.add(new Grid("re-use", Tables.columns("Device", "What it is", "Our end", "From", "Vehicles"),
                    rows));
        }
    }
}
