// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Part;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.Node;
import org.loomwright.sheets.content.FuseWay;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.LooseParts;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** Tags and labels: as a file of data for a label printer, and as a sheet to cut up. */
final class TagsSheet {

    private record Tag(String sort, List<String> lines, String vehicles) {
    }

    private final Order order;
    private final List<Tag> tags = new ArrayList<>();

    private TagsSheet(Order order) {
        this.order = order;
    }

    static Document of(Order order) {
        TagsSheet sheet = new TagsSheet(order);
        for (LaidHarness harness : order.harnesses()) {
            sheet.branches(harness);
            sheet.looseEnds(harness);
        }
        sheet.fuses();
        sheet.bags();
        Map<String, List<Tag>> sorts = new LinkedHashMap<>();
        sheet.tags.forEach(each -> sorts.computeIfAbsent(each.sort(), any -> new ArrayList<>()).add(each));
        List<Block> blocks = new ArrayList<>();
        List<Row> data = new ArrayList<>();
        sorts.forEach((sort, tags) -> {
            blocks.add(new Block.Heading(Words.capital(sort) + "s: " + tags.size()));
            blocks.add(new Block.Labels(tags.stream().map(each -> each.vehicles().equals("all") ? each.lines()
                    : Stream.concat(each.lines().stream(), Stream.of("only " + each.vehicles())).toList()).toList()));
            tags.forEach(each -> data.add(Row.of(sort, each.lines().getFirst(), line(each, 1), line(each, 2),
                    String.join("; ", each.lines().subList(Math.min(3, each.lines().size()), each.lines().size())),
                    each.vehicles())));
        });
        return new Document(order.name() + "-tags-and-labels", "Tags and labels",
                order.title() + " (" + order.name() + ")", false, blocks, List.of(new Grid("tags",
                        Tables.columns("sort", "line 1", "line 2", "line 3", "more", "vehicles"), data)));
    }

    private static String line(Tag tag, int index) {
        return tag.lines().size() > index ? tag.lines().get(index) : "";
    }

    private void branches(LaidHarness harness) {
        for (TreeRun run : harness.tree().runs()) {
            Condition when = run.when().and(harness.vehicles());
            if (run.run().kind() != Run.Kind.BRANCH || when.isNever()) {
                continue;
            }
            String place = run.run().to().map(each -> harness.place(each.text())).orElse("");
            String connectors = String.join(", ", harness.view().connectors().values().stream()
                    .filter(each -> harness.spots().of(each.cavity("")).stream()
                            .anyMatch(spot -> spot.value().run().equals(run.name())))
                    .map(each -> each.name() + " " + each.connector().title()).toList());
            tags.add(new Tag("branch tag", List.of(place, run.name() + " of " + harness.name(), connectors,
                    harness.title()), harness.words(when)));
        }
    }

    private void looseEnds(LaidHarness harness) {
        for (Piece piece : harness.pieces()) {
            for (PieceEnd end : piece.ends()) {
                boolean loose = end.node().kind() == Node.Kind.PIN || end.node().kind() == Node.Kind.STUD;
                if (loose) {
                    tags.add(new Tag("loose-end tag", List.of(piece.legend(), "to " + end.label() + " " + end.title(),
                            piece.function() + ", " + piece.colour() + " " + piece.written(),
                            "wire " + piece.wire() + " of " + harness.name()), harness.words(piece.when())));
                }
            }
        }
    }

    private void fuses() {
        for (LaidHarness harness : order.harnesses()) {
            for (FuseWay way : FuseWay.of(harness)) {
                String protects = way.block() ? way.circuits() : way.part().title();
                tags.add(new Tag("fuse-lid label", Stream.of((way.label() + " " + way.written()).strip(),
                        way.device().device().title(), protects, way.written().isEmpty() ? ""
                                : "never fit a larger one").filter(each -> !each.isEmpty()).toList(),
                        harness.words(way.when())));
            }
        }
    }

    private void bags() {
        Map<String, List<LooseParts.Line>> bags = PartsSheet.bags(order);
        bags.forEach((bag, lines) -> {
            List<String> texts = new ArrayList<>(List.of(bag, order.title() + revision()));
            lines.forEach(each -> texts.add(each.quantity() + " x " + each.part().map(Part::title)
                    .orElse(each.item()) + (each.when().equals(order.vehicles()) ? ""
                            : " (" + Words.of(each.when(), order.vehicles()) + ")")));
            tags.add(new Tag("bag label", texts, "all"));
        });
        Optional<String> needs = order.kit().flatMap(each -> each.needs()).map(need -> "needs the kit "
                + need.kit().text() + " revision " + need.revision() + (need.orLater() ? " or later" : ""));
        List<String> texts = new ArrayList<>(List.of(order.title() + revision(), order.platformTitle(),
                order.words()));
        needs.ifPresent(texts::add);
        texts.add("Sources: " + order.sources());
        texts.add("Read the cautions on the cover sheet first. Disconnect the battery's ground first.");
        tags.add(new Tag("box label", texts, "all"));
    }

    private String revision() {
        return order.revision().isEmpty() ? "" : ", revision " + order.revision();
    }
}
