// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.Quantity;

/**
 * A fuse, link or breaker of a harness, or one of the ways of its fuse block.
 *
 * @param device the in-line device
 * @param part   what it is
 * @param label  {@code F1}; {@code FB:lamps} for a way of a block
 * @param rating of the fuse; empty when none is stated
 * @param pieces the wires at it; of a way of a block only those behind it
 * @param block  true for a way of a block, into which a fuse from the box goes
 * @param when   the vehicles that have it, for a way those whose wires use it
 */
public record FuseWay(DeviceView device, Part part, String label, Optional<Quantity> rating, List<Piece> pieces,
        boolean block, Condition when) {

    public FuseWay {
        pieces = List.copyOf(pieces);
    }

    /** All of a harness in source order, unused ways of blocks left out. Linear in its devices times its wires. */
    public static List<FuseWay> of(LaidHarness harness) {
        List<FuseWay> ways = new ArrayList<>();
        for (DeviceView device : harness.view().devices().values()) {
            for (Case<Part> part : device.parts()) {
                Condition when = part.when().and(device.when()).and(harness.vehicles());
                List<Part.Join> joins = part.value().joins().stream().filter(Part.Join::protective).toList();
                if (!when.isNever() && joins.size() > 1) {
                    joins.forEach(join -> way(harness, device, part.value(), join, when, ways));
                } else if (!when.isNever() && isProtective(part.value(), joins)) {
                    Optional<Quantity> rating = part.value().figure(Part.FigureKind.RATING).map(Part.Figure::from)
                            .or(() -> joins.stream().findFirst().flatMap(Part.Join::through));
                    ways.add(new FuseWay(device, part.value(), device.name(), rating, at(harness, device, "", when),
                            false, when));
                }
            }
        }
        return List.copyOf(ways);
    }

    private static boolean isProtective(Part part, List<Part.Join> joins) {
        return part.kind() == Part.Kind.FUSE || part.kind() == Part.Kind.BREAKER
                || part.kind() == Part.Kind.FUSIBLE_LINK || !joins.isEmpty();
    }

    private static void way(LaidHarness harness, DeviceView device, Part part, Part.Join join, Condition when,
            List<FuseWay> ways) {
        String pin = join.to().text();
        List<Piece> pieces = at(harness, device, pin, when);
        Condition used = pieces.stream().map(Piece::when).reduce(when.vehicles().none(), Condition::or).and(when);
        if (!used.isNever()) {
            ways.add(new FuseWay(device, part, device.name() + ":" + pin, join.through(), pieces, true, used));
        }
    }

    private static List<Piece> at(LaidHarness harness, DeviceView device, String pin, Condition when) {
        return harness.pieces().stream().filter(each -> !each.when().excludes(when) && each.ends().stream()
                .map(PieceEnd::node).anyMatch(node -> node.kind() == Node.Kind.PIN
                        && node.element().equals(device.name()) && (pin.isEmpty() || node.pin().equals(pin)))).toList();
    }

    /** The circuits behind it, with what they do. */
    public String circuits() {
        return String.join("; ", new LinkedHashSet<>(pieces.stream()
                .map(each -> each.circuit() + " " + each.function()).toList()));
    }

    /** The rating as written; empty when none is stated. */
    public String written() {
        return rating.map(Quantity::written).orElse("");
    }

    /** Whether a fuse from the box is the one for this way of a block: of its family and rating. */
    public boolean takes(Part fuse) {
        Optional<Quantity> amps = fuse.figure(Part.FigureKind.RATING).map(Part.Figure::from);
        return block && fuse.kind() == Part.Kind.FUSE && amps.isPresent() && rating.isPresent()
                && amps.get().sameValue(rating.get())
                && fuse.word(Part.WordKind.FAMILY).equals(part.word(Part.WordKind.FAMILY));
    }
}
