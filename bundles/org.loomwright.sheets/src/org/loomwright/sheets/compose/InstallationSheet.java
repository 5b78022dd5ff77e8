// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sheets.content.FuseWay;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.LooseParts;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Typeface;

/**
 * The installation sheets. For one vehicle they say what is to be done; where the vehicles that they are made for
 * differ, each line says for which of them it holds.
 */
final class InstallationSheet {

    private final Order order;
    private final Typeface face;
    private final List<Block> blocks = new ArrayList<>();

    private InstallationSheet(Order order, Typeface face) {
        this.order = order;
        this.face = face;
    }

    static Document of(Order order, Typeface face) {
        InstallationSheet sheet = new InstallationSheet(order, face);
        sheet.blocks.add(new Block.Cautions(Cautions.ALWAYS));
        sheet.box();
        sheet.out();
        for (LaidHarness harness : order.harnesses()) {
            sheet.picture(harness);
            sheet.blocks.add(new Block.Heading("Step by step: " + harness.title()));
            sheet.blocks.add(new Block.Steps(new InstallationSteps(order, harness).steps()));
            sheet.connections(harness);
        }
        sheet.fuses();
        sheet.blocks.addAll(PowerChecks.of(order));
        sheet.blocks.add(new Block.Heading("Notes"));
        sheet.blocks.add(new Block.Lines(8));
        return new Document(order.name() + "-installation", "Installation sheets",
                order.title() + " (" + order.name() + ")", false, sheet.blocks, List.of());
    }

    private void box() {
        blocks.add(new Block.Heading("What is in the box"));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            rows.add(Tables.row(Cell.of("1"), Cell.of("Harness: " + harness.title()), Cell.of("below"),
                    Cell.of(Words.of(harness.vehicles(), order.vehicles())), Cell.box()));
        }
        for (LooseParts.Line line : LooseParts.of(order).lines()) {
            rows.add(Tables.row(Cell.of(Integer.toString(line.quantity())), Cell.of(line.part().map(Part::title)
                    .orElse(line.item())), Cell.of(PartsSheet.used(line)),
                    Cell.of(Words.of(line.when(), order.vehicles())), Cell.box()));
        }
        blocks.add(new Grid("box", Tables.columns("#Quantity", "What", "Used for", "Vehicles", "Found"), rows));
    }

    private void out() {
        blocks.add(new Block.Heading("What must come out of the car"));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            for (String name : harness.view().covers()) {
                Optional<WiringView> drawing = order.project().wiring(name)
                        .filter(each -> !each.when().excludes(harness.vehicles()));
                drawing.ifPresent(each -> rows.add(Tables.row(Cell.of(each.wiring().title() + " (" + name + ")"),
                        Cell.of(each.connectors().size() + " connectors, " + each.wires().size() + " wires"),
                        Cell.of(Words.of(each.when().and(harness.vehicles()), harness.vehicles())), Cell.box())));
            }
        }
        if (rows.isEmpty()) {
            blocks.add(new Block.Words("Nothing: the kit takes the place of no wiring of the factory."));
            return;
        }
        blocks.add(new Grid("out", Tables.columns("The factory's wiring", "How much", "Vehicles", "Out"), rows));
        blocks.add(new Block.Words("Take photographs first. Leave every old end where it can be found until the new"
                + " one is in its place. Splices and leads of earlier owners are not on any drawing: follow each to its"
                + " end before it is cut."));
    }

    private void picture(LaidHarness harness) {
        blocks.add(new Block.Heading("The harness: " + harness.title()));
        Boarding boarding = Boarding.of(harness, 3_000, 1_500);
        blocks.add(new Block.Picture(InstallationPicture.of(boarding, face), "Not to scale. Thick lines: branches that"
                + " these vehicles use. Dashed lines: branches that are capped and parked, or used by some of the"
                + " vehicles only."));
        List<Row> rows = new ArrayList<>();
        for (var strand : boarding.strands()) {
            if (harness.view().run(strand.name()).flatMap(each -> each.to()).isPresent()) {
                String place = harness.place(harness.view().run(strand.name()).orElseThrow().to().orElseThrow().text());
                List<String> ends = boarding.ends().getOrDefault(strand.name(), List.of());
                rows.add(Row.of(strand.name(), place, String.join(", ", ends), state(harness, strand.name())));
            }
        }
        blocks.add(new Grid("branches", Tables.columns("Branch", "Goes to", "Ends in", "On this vehicle"), rows));
    }

    /** {@code used}; {@code capped, parked at Front panel}; {@code capped when not fogLamps, ...}. */
    static String state(LaidHarness harness, String branch) {
        List<String> words = new ArrayList<>();
        Condition rest = harness.vehicles();
        for (Ours.Cap cap : harness.view().wiring().ours().caps()) {
            Condition when = harness.resolve(cap.when());
            if (cap.branch().text().equals(branch) && !when.isNever()) {
                String parked = cap.parkedAt().map(each -> ", parked at " + harness.place(each.text())).orElse("");
                String vehicles = harness.words(when);
                words.add("CAPPED" + (vehicles.equals("all") ? "" : " when " + vehicles) + parked);
                rest = rest.minus(when);
            }
        }
        if (!rest.isNever()) {
            words.addFirst(words.isEmpty() ? "used" : "used when " + harness.words(rest));
        }
        return String.join("; ", words);
    }

    private void connections(LaidHarness harness) {
        blocks.add(new Block.Heading("Every connection: " + harness.title()));
        List<Row> rows = new ArrayList<>();
        List<Piece> pieces = harness.pieces();
        Set<String> elements = new LinkedHashSet<>();
        elements.addAll(harness.view().connectors().keySet());
        elements.addAll(harness.view().studs().keySet());
        pieces.stream().flatMap(each -> each.ends().stream()).map(PieceEnd::node)
                .filter(each -> each.kind() == Node.Kind.PIN).forEach(each -> elements.add(each.element()));
        for (String element : elements) {
            List<Row> group = new ArrayList<>();
            String title = "";
            for (Piece piece : pieces) {
                for (PieceEnd end : piece.ends()) {
                    if (end.node().element().equals(element) && end.node().kind() != Node.Kind.SPLICE) {
                        title = end.title();
                        group.add(Tables.row(Cell.of(end.label()), Cell.of(piece.legend()), Cell.colour(piece.colour()),
                                Cell.of(piece.written()), Cell.of(piece.function()),
                                Cell.of(harness.words(piece.when())), Cell.box()));
                    }
                }
            }
            if (!group.isEmpty()) {
                rows.add(Tables.group(element + "  " + title, 7));
                rows.addAll(group);
            }
        }
        blocks.add(new Grid("connections", Tables.columns("At", "Print on wire", "Colour", "Size", "Function",
                "Vehicles", "Done"), rows));
    }

    private void fuses() {
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            for (FuseWay way : FuseWay.of(harness)) {
                rows.add(Row.of(way.label(), way.device().device().title(), way.part().title(), way.written(),
                        way.circuits(), harness.words(way.when())));
            }
        }
        blocks.add(new Block.Heading("Fuse chart"));
        if (rows.isEmpty()) {
            blocks.add(new Block.Words("These harnesses hold no fuse of their own; the vehicle's fuses stay as they"
                    + " are."));
        } else {
            blocks.add(new Grid("fuses", Tables.columns("Fuse", "What it protects", "Part", "Rating", "Circuits",
                    "Vehicles"), rows));
            blocks.add(new Block.Words("Never fit a larger fuse. A fuse that blows has a reason: find it first."));
        }
    }
}
