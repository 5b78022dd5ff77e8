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
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/**
 * The circuit diagrams: one for each circuit of a harness, from the battery at the left to ground at the right, over
 * everything that the harness is plugged into, with the colours of the wires drawn and written. Where vehicles differ,
 * each wire says for which of them it is; where that grows too large, they have diagrams of their own. What is too wide
 * for a page is folded.
 */
final class CircuitSheet {

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
                + " wiring differs between these vehicles: at each branch stand the vehicles that have it.")));
        CircuitDivision division = new CircuitDivision(order, face, room.width() / SMALLEST,
                (room.height() - HEADING) / SMALLEST);
        circuits.forEach((circuit, pieces) -> division.of(harness, ways, pieces).forEach(each -> {
            blocks.add(new Block.Heading("Circuit " + circuit + "  " + pieces.getFirst().function()
                    + (each.vehicles().isEmpty() ? "" : ": " + each.vehicles())));
            if (each.omitted() > 0) {
                blocks.add(new Block.Words("Beyond our plugs these vehicles are wired in too many ways to be drawn"
                        + " together: " + each.omitted() + " wires of the car are left out here. Sheets for one"
                        + " vehicle (--for) show its own, from the battery and back."));
            }
            each.parts().forEach(part -> blocks.add(new Block.Picture(part, "")));
        }));
        return document(harness, blocks);
    }

    private static Document document(LaidHarness harness, List<Block> blocks) {
        return new Document(harness.name() + "-circuit-diagrams", "Circuit diagrams",
                harness.title() + " (" + harness.name() + ")", true, blocks, List.of());
    }
}
