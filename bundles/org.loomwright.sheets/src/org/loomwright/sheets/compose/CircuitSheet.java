// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.sheets.content.CurrentWays;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/**
 * The circuit diagrams: one for each circuit of a harness, from the battery at the left to ground at the right, over
 * everything that the harness is plugged into, with the colours of the wires drawn and written. Where vehicles differ,
 * each wire says for which of them it is. What is too wide for a page is folded.
 */
final class CircuitSheet {

    /** Characters in a line of a label, and where that makes a diagram too high for a page. */
    private static final int SHORT = 25;
    private static final int LONG = 46;
    /** Type may be made smaller by this: from 8.5 to 7.2 points. */
    private static final double SMALLEST = 0.85;
    /** Height of a heading above a diagram, in mm. */
    private static final double HEADING = 22;

    private CircuitSheet() {
    }

    /** A document of this sort without content, for the room that its pages have. */
    static Document empty(LaidHarness harness) {
        return document(harness, List.of());
    }

    static Document of(Order order, LaidHarness harness, Pager.Room room, Typeface face) {
        CircuitPicture picture = new CircuitPicture(face);
        Folding folding = new Folding(face, room.width() / SMALLEST, (room.height() - HEADING) / SMALLEST);
        Optional<CurrentWays> ways = CurrentWays.of(order, harness);
        Map<String, List<Piece>> circuits = new TreeMap<>(new NaturalOrder());
        harness.pieces().forEach(each -> circuits.computeIfAbsent(each.circuit(), any -> new ArrayList<>()).add(each));
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Words("Read from the left, the battery, to the right, ground; switches are taken as"
                + " closed. Thick lines are the wires of the circuit, thin ones what they are plugged into. A line"
                + " that is cut goes on below, at the same letter. Where a line has several labels, each is the wire"
                + " of other vehicles: no vehicle has two of them. A line whose vehicles differ in colour is black."
                + " Where a circuit takes many loads to ground, each has the last wire of its feed alone."));
        ways.filter(each -> !each.apart().isEmpty()).ifPresent(each -> blocks.add(new Block.Words("The car's own"
                + " wiring differs between these vehicles and is not drawn beyond our plugs: sheets for one vehicle"
                + " show the way through it from the battery and back.")));
        circuits.forEach((circuit, pieces) -> {
            blocks.add(new Block.Heading("Circuit " + circuit + "  " + pieces.getFirst().function()));
            CircuitGraph graph = CircuitGraph.of(order, harness, ways, pieces);
            List<Drawing> parts = folding.parts(picture.of(graph, SHORT));
            if (parts.size() > 1) {
                List<Drawing> flat = folding.parts(picture.of(graph, LONG));
                parts = area(flat) < area(parts) ? flat : parts;
            }
            parts.forEach(each -> blocks.add(new Block.Picture(each, "")));
        });
        return document(harness, blocks);
    }

    private static double area(List<Drawing> parts) {
        return parts.stream().mapToDouble(Drawing::height).sum();
    }

    private static Document document(LaidHarness harness, List<Block> blocks) {
        return new Document(harness.name() + "-circuit-diagrams", "Circuit diagrams",
                harness.title() + " (" + harness.name() + ")", true, blocks, List.of());
    }
}
