// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Copper;
import org.loomwright.harness.Part;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.LooseParts;
import org.loomwright.sheets.content.Needed;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Reels;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The parts and bag list over the whole kit: the box, its bags, and what each harness takes. */
final class PartsSheet {

    private final Order order;
    private final List<Block> blocks = new ArrayList<>();
    private final List<Row> data = new ArrayList<>();

    private PartsSheet(Order order) {
        this.order = order;
    }

    static Document of(Order order) {
        PartsSheet sheet = new PartsSheet(order);
        sheet.box();
        order.harnesses().forEach(sheet::harness);
        return new Document(order.name() + "-parts-and-bags", "Parts and bag list",
                order.title() + " (" + order.name() + ")", false, sheet.blocks,
                List.of(new Grid("parts", Tables.columns("harness or bag", "#quantity", "unit", "sort", "part", "title",
                        "size", "colour", "where", "vehicles"), sheet.data)));
    }

    /** The bags of a kit: one for each sort of loose part, lettered in the order of the kit. */
    static Map<String, List<LooseParts.Line>> bags(Order order) {
        Map<String, List<LooseParts.Line>> bags = new LinkedHashMap<>();
        for (LooseParts.Line line : LooseParts.of(order).lines()) {
            String sort = line.part().map(Part::kind).map(PartsSheet::bag).orElse("other parts");
            bags.computeIfAbsent(sort, any -> new ArrayList<>()).add(line);
        }
        Map<String, List<LooseParts.Line>> lettered = new LinkedHashMap<>();
        bags.forEach((sort, lines) -> lettered.put("Bag " + letter(lettered.size()) + ", " + sort, lines));
        return lettered;
    }

    private static String letter(int index) {
        return index < 26 ? Character.toString('A' + index) : letter(index / 26 - 1) + letter(index % 26);
    }

    private static String bag(Part.Kind kind) {
        return switch (kind) {
            case FUSE, BREAKER, FUSIBLE_LINK -> "fuses and links";
            case RELAY, FLASHER, SWITCH -> "relays, flashers and switches";
            case LAMP -> "lamps";
            case CLIP, OPENING, COVERING -> "clips, grommets and sleeves";
            case HOUSING, TERMINAL, SEAL, PLUG, SPLICE_METHOD -> "connector parts";
            default -> "units and blocks";
        };
    }

    private void box() {
        if (order.kit().isEmpty()) {
            return;
        }
        blocks.add(new Block.Heading("In the box"));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            rows.add(Tables.row(Cell.of("1"), Cell.of(harness.name()), Cell.of("harness: " + harness.title()),
                    Cell.of(""), Cell.of(Words.of(harness.vehicles(), order.vehicles())), Cell.box()));
        }
        bags(order).forEach((bag, lines) -> {
            rows.add(Tables.group(bag, 6));
            for (LooseParts.Line line : lines) {
                String title = line.part().map(Part::title).orElse("no part of that name in the catalogues");
                String vehicles = Words.of(line.when(), order.vehicles());
                rows.add(Tables.row(Cell.of(Integer.toString(line.quantity())), Cell.of(line.item()), Cell.of(title),
                        Cell.of(used(line)), Cell.of(vehicles), Cell.box()));
                data.add(Row.of(bag, Integer.toString(line.quantity()), "pc", line.part().map(Part::kind)
                        .map(Words::sort).orElse(""), line.item(), title, "", "", used(line), vehicles));
            }
        });
        blocks.add(new Grid("box", Tables.columns("#Quantity", "Item", "What it is", "Used, spare", "In the box of",
                "Packed"), rows));
    }

    /** {@code 2 used: F1, F2}; {@code 2 used when halogen, else spare}. */
    static String used(LooseParts.Line line) {
        if (line.where().isEmpty()) {
            return "the sources do not say where";
        }
        List<String> words = new ArrayList<>();
        for (Map.Entry<Integer, Condition> each : line.used().entrySet()) {
            int spare = line.quantity() - each.getKey();
            String count = each.getKey() == 0 ? "all spare" : each.getKey() + " used"
                    + (spare > 0 ? ", " + spare + " spare" : "");
            words.add(line.used().size() == 1 ? count : count + " when " + Words.of(each.getValue()));
        }
        return String.join("; ", words) + (words.isEmpty() ? "" : ": ") + String.join(", ", line.where());
    }

    private void harness(LaidHarness harness) {
        blocks.add(new Block.Heading("Parts of the harness: " + harness.title() + " (" + harness.name() + ")"));
        List<Row> rows = new ArrayList<>();
        Needed.Sort sort = null;
        for (Needed.Line line : Needed.of(harness).lines()) {
            if (line.sort() != sort) {
                sort = line.sort();
                rows.add(Tables.group(Words.capital(sort.words()), 6));
            }
            boolean open = line.sort() == Needed.Sort.OPEN;
            String name = open ? "" : line.part();
            String part = open ? "(to choose)" : name.isEmpty() ? "(not stated)" : name;
            String title = open ? line.part() : name.isEmpty() ? "" : Words.title(name, harness.parts());
            String where = String.join(", ", line.where());
            String vehicles = harness.words(line.when());
            rows.add(Tables.row(Cell.of(line.quantity()), Cell.of(line.unit()), Cell.of(part), Cell.of(title),
                    Cell.of(where), Cell.of(vehicles)));
            data.add(Row.of(harness.name(), line.quantity(), line.unit(), line.sort().words(), name, title, "",
                    "", where, vehicles));
        }
        Reels reels = Reels.of(harness.pieces(), Copper.HANDBOOK);
        if (!reels.list().isEmpty()) {
            rows.add(Tables.group("Cable", 6));
        }
        for (Reels.Reel reel : reels.list()) {
            String title = Words.title(reel.cable(), harness.parts());
            rows.add(Tables.row(Cell.of(Words.metres(reel.length())), Cell.of("m"),
                    Cell.of(reel.cable().isEmpty() ? "(not stated)" : reel.cable()), Cell.of(reel.size() + ", "
                            + title), Cell.colour(reel.colour()), Cell.of("")));
            data.add(Row.of(harness.name(), Words.metres(reel.length()), "m", "cable", reel.cable(), title,
                    reel.size(), reel.colour(), "", ""));
        }
        blocks.add(new Grid("harness", Tables.columns("#Quantity", "", "Part", "Title", "Where", "Vehicles"), rows));
    }
}
