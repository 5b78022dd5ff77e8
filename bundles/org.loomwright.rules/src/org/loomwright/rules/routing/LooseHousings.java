// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Shapes;

/**
 * The housings that do not pass an opening and so are fitted only after their wires have gone through. A housing whose
 * part states no {@code diameter} is not among them.
 */
final class LooseHousings {

    private final WiringView view;
    private final Shapes.Shape shape;
    private final PlacedParts.At opening;
    private final double bore;

    LooseHousings(WiringView view, Shapes.Shape shape, PlacedParts.At opening, double bore) {
        this.view = view;
        this.shape = shape;
        this.opening = opening;
        this.bore = bore;
    }

    /** Both sides of the opening: {@code beyond it H1 (34.0 mm); before it J1 (40.0 mm)}; empty without any. */
    String words() {
        if (shape.tree().datum().isEmpty() || opening.stretch().isEmpty()
                || opening.from().kind() == Spot.Kind.DATUM) {
            return "";
        }
        List<String> beyond = new ArrayList<>();
        List<String> before = new ArrayList<>();
        for (ConnectorView connector : view.connectors().values()) {
            Optional<Double> widest = connector.housings().stream().map(Case::value)
                    .flatMap(part -> BundleTooBigForOpening.figure(part, Part.FigureKind.DIAMETER).stream())
                    .filter(mm -> mm > bore).max(Double::compare);
            List<Case<Spot>> spots = shape.spots().of(connector.cavity(""));
            if (widest.isPresent() && !spots.isEmpty()) {
                (spots.stream().anyMatch(spot -> isBeyond(spot.value())) ? beyond : before)
                        .add(connector.name() + " (" + PossibleBundle.mm(widest.get()) + ")");
            }
        }
        List<String> sides = new ArrayList<>();
        if (!beyond.isEmpty()) {
            sides.add("beyond it " + String.join(", ", beyond));
        }
        if (!before.isEmpty()) {
            sides.add("before it " + String.join(", ", before));
        }
        return String.join("; ", sides);
    }

    /** True when the way from the datum to a spot leads through the opening. */
    private boolean isBeyond(Spot spot) {
        Length station = opening.stretch().orElseThrow()[0];
        for (Route.Leg leg : shape.tree().route(shape.tree().datum().orElseThrow(), spot).legs()) {
            Optional<Length> end = leg.to().station().length();
            if (leg.run().equals(opening.from().run()) && end.isPresent() && end.get().compareTo(station) >= 0) {
                return true;
            }
        }
        return false;
    }
}
