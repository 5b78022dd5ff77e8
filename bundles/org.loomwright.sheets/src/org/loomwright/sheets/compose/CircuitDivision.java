// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sheets.content.CurrentWays;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.page.Typeface;

/**
 * Draws a circuit for all vehicles at once where that can be read, else the vehicles of one drawing of the car apart
 * from the others, and so on. For use by one thread.
 */
final class CircuitDivision {

    /** Characters in a line of a label, and where that makes a diagram too high for a page. */
    private static final int SHORT = 25;
    private static final int LONG = 46;
    /** A diagram in more parts than these is divided. */
    private static final int MOST_PARTS = 4;

    private final Order order;
    private final CircuitPicture picture;
    private final Folding folding;
    private final double width;
    private final double height;

    /** @param width the most that a part may be wide, in mm, and {@code height} how high */
    CircuitDivision(Order order, Typeface face, double width, double height) {
        this.order = order;
        this.picture = new CircuitPicture(face);
        this.folding = new Folding(face, width, height);
        this.width = width;
        this.height = height;
    }

    /**
     * A diagram.
     *
     * @param vehicles in words; empty for all
     * @param omitted  how many wires of the car were left out
     * @param parts    in reading order
     */
    record Division(String vehicles, int omitted, List<Drawing> parts) {
    }

    /** The diagrams of a circuit, which {@code pieces} make. */
    List<Division> of(LaidHarness harness, Optional<CurrentWays> ways, List<Piece> pieces) {
        List<Division> divisions = new ArrayList<>();
        divide(harness, harness, ways, pieces, divisions);
        return divisions;
    }

    private void divide(LaidHarness whole, LaidHarness some, Optional<CurrentWays> ways, List<Piece> pieces,
            List<Division> divisions) {
        CircuitGraph graph = CircuitGraph.of(order, some, ways, pieces);
        List<Drawing> parts = parts(graph);
        Optional<Condition> apart = isReadable(parts) ? Optional.empty() : apart(graph, some, ways);
        if (apart.isEmpty()) {
            String words = whole.words(some.vehicles());
            divisions.add(new Division(words.equals("all") ? "" : words, graph.omitted(), parts));
            return;
        }
        for (Condition each : List.of(apart.get(), some.vehicles().minus(apart.get()))) {
            LaidHarness fewer = some.within(each);
            List<Piece> there = fewer.pieces().stream()
                    .filter(piece -> piece.circuit().equals(pieces.getFirst().circuit())).toList();
            if (!there.isEmpty()) {
                divide(whole, fewer, CurrentWays.of(order, fewer), there, divisions);
            }
        }
    }

    private List<Drawing> parts(CircuitGraph graph) {
        List<Drawing> parts = folding.parts(picture.of(graph, SHORT));
        if (parts.size() > 1) {
            List<Drawing> flat = folding.parts(picture.of(graph, LONG));
            parts = area(flat) < area(parts) ? flat : parts;
        }
        return parts;
    }

    private boolean isReadable(List<Drawing> parts) {
        return parts.size() <= MOST_PARTS && parts.stream().allMatch(each -> each.width() <= width + 1e-6
                && each.height() <= height + 1e-6);
    }

    /** The vehicles of the drawing that leaves the fewest wires to the larger half; empty when none leaves fewer. */
    private Optional<Condition> apart(CircuitGraph graph, LaidHarness some, Optional<CurrentWays> ways) {
        List<Condition> strands = graph.lines().stream().flatMap(each -> each.strands().stream())
                .map(CircuitGraph.Strand::when).toList();
        long least = strands.size();
        Condition best = null;
        for (String name : ways.map(each -> each.apart().stream().sorted().toList()).orElse(List.of())) {
            Condition there = order.project().wiring(name).map(WiringView::when).orElse(some.vehicles())
                    .and(some.vehicles());
            Condition rest = some.vehicles().minus(there);
            long most = Math.max(strands.stream().filter(each -> !each.excludes(there)).count(),
                    strands.stream().filter(each -> !each.excludes(rest)).count());
            if (!there.isNever() && !rest.isNever() && most < least) {
                least = most;
                best = there;
            }
        }
        return Optional.ofNullable(best);
    }

    private static double area(List<Drawing> parts) {
        return parts.stream().mapToDouble(Drawing::height).sum();
    }
}
