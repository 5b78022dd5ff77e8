// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.text.Problems;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Unit;

/**
 * Which units one text uses, and which of its numbers have none. A bare number gets as its fix the unit of that
 * dimension that the file uses most; so bare numbers are reported when all of the file is known. Not thread-safe while
 * it is filled.
 */
public final class Units {
    private final List<Use> uses = new ArrayList<>();
    private final List<Bare> bare = new ArrayList<>();

    /** A unit or, if that is null, a system of wire sizes that stands at an offset. */
    private record Use(int offset, Unit unit, SizeSystem system) {
    }

    /** A number without a unit; kind is null for a wire size. */
    private record Bare(Span span, int end, Kind kind) {
    }

    void use(int offset, Unit unit) {
        uses.add(new Use(offset, unit, null));
    }

    void use(int offset, SizeSystem system) {
        uses.add(new Use(offset, null, system));
    }

    void bare(Span span, int end, Kind kind) {
        bare.add(new Bare(span, end, kind));
    }

    /**
     * The units of a text in which one stretch is replaced. O(units).
     *
     * @param from  where the stretch starts
     * @param to    where it ends
     * @param inner what the new stretch has, counted in the new text
     * @param moved tells where a span of the old text that does not lie in the stretch is in the new one
     */
    public Units replaced(int from, int to, Units inner, UnaryOperator<Span> moved) {
        Units units = new Units();
        int by = moved.apply(new Span("", to, 0, 1, 1)).offset() - to;
        uses.stream().filter(each -> each.offset < from).forEach(units.uses::add);
        units.uses.addAll(inner.uses);
        uses.stream().filter(each -> each.offset >= to)
                .forEach(each -> units.uses.add(new Use(each.offset + by, each.unit, each.system)));
        for (Bare each : bare) {
            if (each.span.offset() < from || each.span.offset() >= to) {
                Span span = moved.apply(each.span);
                units.bare.add(new Bare(span, each.end + span.offset() - each.span.offset(), each.kind));
            }
        }
        units.bare.addAll(inner.bare);
        return units;
    }

    /** The same, all of it moved alike. */
    public Units moved(UnaryOperator<Span> moved) {
        Units units = new Units();
        int by = moved.apply(new Span("", 0, 0, 1, 1)).offset();
        uses.forEach(each -> units.uses.add(new Use(each.offset + by, each.unit, each.system)));
        bare.forEach(each -> units.bare.add(new Bare(moved.apply(each.span), each.end + by, each.kind)));
        return units;
    }

    /** Reports the bare numbers. */
    public void report(Problems problems) {
        if (bare.isEmpty()) {
            return;
        }
        Map<Unit, Integer> used = new EnumMap<>(Unit.class);
        Map<SizeSystem, Integer> systems = new EnumMap<>(SizeSystem.class);
        for (Use use : uses) {
            if (use.unit != null) {
                used.merge(use.unit, 1, Integer::sum);
            } else {
                systems.merge(use.system, 1, Integer::sum);
            }
        }
        for (Bare number : bare) {
            Map<Unit, Integer> fitting = number.kind == null ? Map.of() : usedFor(used, number.kind);
            Optional<String> unit = number.kind == null ? most(systems).map(SizeSystem::symbol)
                    : most(fitting).or(number.kind::usual).map(Unit::symbol);
            String needed = number.kind == null ? "a wire size needs its system: ga (SAE), awg or mm2"
                    : number.kind.words() + " needs a unit, such as " + number.kind.example();
            TextEdit[] edits = unit.map(symbol -> new TextEdit[] {problems.insert(number.end, " " + symbol)})
                    .orElse(new TextEdit[0]);
            String advice = unit.map(symbol -> "this file mostly says " + symbol).filter(words -> !used.isEmpty())
                    .orElse("");
            int sorts = number.kind == null ? systems.size() : fitting.size();
            if (sorts == 1 || sorts == 0 && number.kind != null) {
                problems.add("unit-missing", number.span, needed, advice, edits);
            } else {
                problems.guess("unit-missing", number.span, needed, advice, edits);
            }
        }
    }

    private static Map<Unit, Integer> usedFor(Map<Unit, Integer> used, Kind kind) {
        Map<Unit, Integer> fitting = new EnumMap<>(used);
        fitting.keySet().removeIf(unit -> !kind.allows(unit));
        return fitting;
    }

    private static <K extends Enum<K>> Optional<K> most(Map<K, Integer> counts) {
        K best = null;
        for (Map.Entry<K, Integer> each : counts.entrySet()) {
            int versus = best == null ? 1 : Integer.compare(each.getValue(), counts.get(best));
            if (versus > 0 || versus == 0 && each.getKey().compareTo(best) < 0) {
                best = each.getKey();
            }
        }
        return Optional.ofNullable(best);
    }
}
