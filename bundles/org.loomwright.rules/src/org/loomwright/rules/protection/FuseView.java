// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.protection;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.electric.connection.Protection;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.Dimension;

/**
 * A fuse or breaker of the network with what its rating means.
 *
 * @param edge    its connection
 * @param inside  what makes it
 * @param label   its name for people: {@code fuse F3}, {@code fuse 3-4 of B1}
 * @param basis   what its rating states
 * @param ratings its rating in A as stated, by vehicles
 */
record FuseView(Edge edge, Link.Inside inside, String label, Basis basis, List<Case<Double>> ratings) {

    /** What the rating of a fuse states. */
    enum Basis {
        /** The current that it carries for ever. */
        CONTINUOUS,
        /** The current that blows it. */
        BLOW,
        /** The source does not say. */
        UNSTATED
    }

    /** The fuse of a protective connection; empty for any other, fusible links too. */
    static Optional<FuseView> of(Edge edge) {
        if (!edge.protection().limitsOverload() || !(edge.link() instanceof Link.Inside inside)) {
            return Optional.empty();
        }
        return Optional.of(new FuseView(edge, inside, label(edge, inside), basis(inside.part()),
                ratings(edge, inside)));
    }

    private static String label(Edge edge, Link.Inside inside) {
        String pins = inside.join().filter(join -> inside.part().joins().size() > 1)
                .map(join -> " " + join.from().text() + "-" + join.to().text() + " of").orElse("");
        return edge.protection().words() + pins + " " + inside.holder().name();
    }

    private static Basis basis(Part part) {
        Optional<String> stated = part.word(Part.WordKind.BASIS).map(word -> word.toLowerCase(Locale.ROOT));
        if (stated.filter("blow"::equals).isPresent()) {
            return Basis.BLOW;
        }
        boolean known = stated.filter("continuous"::equals).isPresent() || part.word(Part.WordKind.FAMILY).isPresent();
        return known ? Basis.CONTINUOUS : Basis.UNSTATED;
    }

    private static List<Case<Double>> ratings(Edge edge, Link.Inside inside) {
        var through = inside.join().flatMap(Part.Join::through)
                .filter(quantity -> quantity.unit().dimension() == Dimension.CURRENT);
        if (through.isPresent()) {
            return List.of(new Case<>(through.get().si(), edge.when(), inside.join().orElseThrow().span()));
        }
        return PartFacts.figures(inside.part(), Part.FigureKind.RATING, edge.when()).stream()
                .filter(each -> each.value().from().unit().dimension() == Dimension.CURRENT)
                .map(each -> new Case<>(each.value().from().si(), each.when(), each.span())).toList();
    }

    /** Whether it closes again by itself when it has cooled: it then cycles and clears nothing. */
    boolean resets() {
        return edge.protection() == Protection.BREAKER && inside.part().word(Part.WordKind.TYPE)
                .filter("selfResetting"::equals).isPresent();
    }

    /** How many times its continuous rating flows for ever. */
    double forEver() {
        return resets() ? Overload.MINUTES : Overload.LASTING;
    }

    /** Why it does. */
    String why() {
        return resets() ? "closes again by itself and cycles for ever at what opens it, common practice"
                : "carried for ever, from memory";
    }

    /** The vehicles for which no rating is stated. */
    Condition unrated() {
        Condition left = edge.when();
        for (Case<Double> rating : ratings) {
            left = left.minus(rating.when());
        }
        return left;
    }

    /** The current in A that it carries for ever, of a rating as stated. */
    double carried(double rating) {
        return basis == Basis.BLOW ? rating / 2 : rating;
    }

    /** How the current that it carries follows from its rating, for people. */
    String meaning(double rating) {
        String stated = Figure.of(rating) + " A";
        String family = inside.part().word(Part.WordKind.FAMILY).map(word -> " of family " + word).orElse("");
        return switch (basis) {
            case BLOW -> stated + " is the current that blows it; it carries about half, " + Figure.of(rating / 2)
                    + " A (common practice)";
            case CONTINUOUS -> inside.part().word(Part.WordKind.BASIS).isPresent()
                    ? stated + " is its continuous rating"
                    : stated + " is taken for its continuous rating, since it is" + family;
            case UNSTATED -> stated + ", and nothing says what the rating means";
        };
    }
}
