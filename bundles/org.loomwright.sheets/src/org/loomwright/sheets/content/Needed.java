// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Connector.CavityFact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView.SpliceView;
import org.loomwright.quantity.Length;

/**
 * The parts that a harness takes besides its wire.
 *
 * @param lines one for each part and each set of vehicles, sort by sort
 */
public record Needed(List<Line> lines) {

    /**
     * One part.
     *
     * @param sort   what sort of part
     * @param part   its name; empty where the source states none; for a terminal on a stud or device what to take
     * @param pieces how many; 0 for a part by length
     * @param length how much of it; zero for a part by the piece
     * @param where  where each of them goes
     * @param when   the vehicles
     */
    public record Line(Sort sort, String part, int pieces, Length length, List<String> where, Condition when) {

        /** {@code 4 pc}, {@code 0.85 m}. */
        public String quantity() {
            return length.isZero() ? Integer.toString(pieces) : Words.metres(length);
        }

        /** Its unit. */
        public String unit() {
            return length.isZero() ? "pc" : "m";
        }
    }

    /** Sorts of parts, in the order of the list. */
    public enum Sort {
        HOUSING, TERMINAL, OPEN, SEAL, PLUG, DEVICE, SPLICE, PIECE, COVERING;

        /** For people. */
        public String words() {
            return switch (this) {
                case OPEN -> "terminal for a stud or a device";
                case PLUG -> "blanking plug";
                case DEVICE -> "in-line device";
                case SPLICE -> "splice method";
                case PIECE -> "clip, grommet or other piece";
                default -> name().toLowerCase(java.util.Locale.ROOT);
            };
        }
    }

    private record Key(Sort sort, String part, Condition when) {
    }

    private record Amount(List<String> where, Length length) {
    }

    /** Counts the parts of a harness. Linear in what it has, but for conditions. */
    public static Needed of(LaidHarness harness) {
        Map<Key, Amount> amounts = new LinkedHashMap<>();
        for (ConnectorView connector : harness.view().connectors().values()) {
            for (Case<Part> housing : connector.housings()) {
                add(harness, amounts, Sort.HOUSING, housing.value().name().text(), connector.name(), housing.when());
            }
            for (CavityFact fact : connector.connector().cavities()) {
                Condition when = harness.resolve(fact.when()).and(connector.when());
                String where = connector.name() + ":" + fact.cavity().text();
                switch (fact.kind()) {
                    case TERMINAL -> add(harness, amounts, Sort.TERMINAL, fact.value().text(), where, when);
                    case SEAL -> add(harness, amounts, Sort.SEAL, fact.value().text(), where, when);
                    case PLUG -> add(harness, amounts, Sort.PLUG, fact.value().text(), where, when);
                    case MAP -> { }
                }
            }
        }
        openEnds(harness, amounts);
        for (DeviceView device : harness.view().devices().values()) {
            device.parts().forEach(each -> add(harness, amounts, Sort.DEVICE, each.value().name().text(),
                    device.name(), each.when()));
        }
        for (SpliceView splice : harness.view().splices().values()) {
            add(harness, amounts, Sort.SPLICE, splice.splice().method().map(Ref::text).orElse(""),
                    splice.splice().name().text(), splice.when());
        }
        harness.view().wiring().placed().forEach(each -> placed(harness, each, amounts));
        List<Line> lines = new ArrayList<>();
        amounts.forEach((key, amount) -> lines.add(new Line(key.sort(), key.part(), amount.length().isZero()
                ? amount.where().size() : 0, amount.length(), List.copyOf(amount.where()), key.when())));
        lines.sort(Comparator.comparing(Line::sort).thenComparing(Line::part, new NaturalOrder()));
        return new Needed(List.copyOf(lines));
    }

    /** Ends for which the source states no terminal, and those on studs and pins, for which it cannot. */
    private static void openEnds(LaidHarness harness, Map<Key, Amount> amounts) {
        Map<Node, Condition> open = new TreeMap<>();
        Map<String, Map<String, Condition>> fitted = new TreeMap<>(new NaturalOrder());
        for (Piece piece : harness.pieces()) {
            for (PieceEnd end : piece.ends()) {
                if (end.node().kind() == Node.Kind.CAVITY && end.terminal().isEmpty()) {
                    open.merge(end.node(), piece.when(), Condition::or);
                } else if (OpenEnd.is(end)) {
                    String fits = piece.written() + " wire, " + OpenEnd.words(harness, piece, end);
                    fitted.computeIfAbsent(fits, any -> new TreeMap<>(new NaturalOrder())).merge(end.label() + " ("
                            + piece.wire() + ")", piece.when(), Condition::or);
                }
            }
        }
        open.forEach((node, when) -> add(harness, amounts, Sort.TERMINAL, "", node.label(), when));
        fitted.forEach((fits, ends) -> ends.forEach((end, when) ->
                add(harness, amounts, Sort.OPEN, fits, end, when)));
    }

    private static void placed(LaidHarness harness, Wiring.Placed placed, Map<Key, Amount> amounts) {
        Condition when = harness.resolve(placed.when());
        String part = placed.part().text();
        String name = placed.name().text();
        if (placed.to().isEmpty()) {
            add(harness, amounts, Sort.PIECE, part, name, when);
            return;
        }
        List<Case<Spot>> from = harness.tree().spots(placed.from());
        List<Case<Spot>> to = harness.tree().spots(placed.to().get());
        Optional<Length> length = from.isEmpty() || to.isEmpty() ? Optional.empty()
                : harness.tree().route(from.getFirst().value(), to.getFirst().value()).length().length();
        if (!when.isNever()) {
            amounts.merge(new Key(Sort.COVERING, part, when), new Amount(new ArrayList<>(List.of(
                    length.isPresent() ? name : name + " (length not known)")), length.orElse(Length.ZERO)),
                    Needed::sum);
        }
    }

    private static void add(LaidHarness harness, Map<Key, Amount> amounts, Sort sort, String part, String where,
            Condition when) {
        Condition within = when.and(harness.vehicles());
        if (!within.isNever()) {
            amounts.merge(new Key(sort, part, within), new Amount(new ArrayList<>(List.of(where)), Length.ZERO),
                    Needed::sum);
        }
    }

    private static Amount sum(Amount one, Amount other) {
        Set<String> where = new LinkedHashSet<>(one.where());
        where.addAll(other.where());
        return new Amount(new ArrayList<>(where), one.length().plus(other.length()));
    }
}
