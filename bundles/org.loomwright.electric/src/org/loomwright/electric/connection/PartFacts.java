// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.Dimension;

/** What a catalogue part states, by vehicles, and what its internal connections do. */
public final class PartFacts {

    private PartFacts() {
    }

    /** Returns the figures of a kind within some vehicles; those of no vehicle are left out. */
    public static List<Case<Part.Figure>> figures(Part part, Part.FigureKind kind, Condition within) {
        List<Case<Part.Figure>> figures = new ArrayList<>();
        for (Fact<Part.Figure> fact : part.figures()) {
            if (fact.value().kind() == kind) {
                Condition when = within.vehicles().resolve(fact.when()).condition().and(within);
                if (!when.isNever()) {
                    figures.add(new Case<>(fact.value(), when, fact.span()));
                }
            }
        }
        return figures;
    }

    /** Returns whether the part turns current into something else. */
    public static boolean isLoad(Part part) {
        return switch (part.kind()) {
            case LAMP, MOTOR, LOAD, RELAY -> true;
            default -> false;
        };
    }

    /**
     * Returns whether a stated connection is a conductor. In a load, a source, a relay or a flasher a connection with a
     * resistance and without states is what the current works in: a filament, a winding, a coil. So is one with a power
     * or a current, and all inside a source that has a resistance.
     */
    public static boolean conducts(Part part, Part.Join join) {
        Optional<Dimension> through = join.through().map(each -> each.unit().dimension());
        boolean works = isLoad(part) || part.kind() == Part.Kind.SOURCE || part.kind() == Part.Kind.FLASHER;
        boolean consumes = through.filter(each -> each == Dimension.POWER || each == Dimension.CURRENT).isPresent();
        boolean resists = through.filter(Dimension.RESISTANCE::equals).isPresent();
        if (join.protective()) {
            return true;
        }
        if (part.kind() == Part.Kind.SOURCE && (consumes || resists)) {
            return false;
        }
        return !works || !consumes && (!join.states().isEmpty() || !resists);
    }

    /**
     * Returns whether a part of two pins that states no connection joins them: fuse, breaker, link, switch, flasher.
     */
    public static boolean inSeries(Part part) {
        boolean series = switch (part.kind()) {
            case FUSE, BREAKER, FUSIBLE_LINK, SWITCH, FLASHER -> true;
            default -> false;
        };
        return series && part.joins().isEmpty() && part.pins().size() == 2;
    }

    /** Returns what a part's own connection protects with; {@code join} is empty for a part in series. */
    static Protection protection(Part part, Optional<Part.Join> join) {
        boolean protective = join.map(Part.Join::protective).orElse(true);
        return switch (part.kind()) {
            case BREAKER -> protective ? Protection.BREAKER : Protection.NONE;
            case FUSIBLE_LINK -> protective ? Protection.LINK : Protection.NONE;
            case FUSE -> protective ? Protection.FUSE : Protection.NONE;
            default -> join.isPresent() && protective ? Protection.FUSE : Protection.NONE;
        };
    }

    /** Returns the pins that a load's current enters and leaves by. */
    public static List<String> loadPins(Part part) {
        List<Part.Join> working = part.joins().stream().filter(join -> !conducts(part, join)).toList();
        return part.pins().stream().map(pin -> pin.name().text())
                .filter(pin -> working.isEmpty() ? part.kind() != Part.Kind.RELAY || !isContact(part, pin)
                        : working.stream().anyMatch(join -> touches(join, pin)))
                .toList();
    }

    private static boolean isContact(Part part, String pin) {
        return part.joins().isEmpty() || part.joins().stream().anyMatch(join -> touches(join, pin));
    }

    private static boolean touches(Part.Join join, String pin) {
        return join.from().text().equals(pin) || join.to().text().equals(pin);
    }
}
