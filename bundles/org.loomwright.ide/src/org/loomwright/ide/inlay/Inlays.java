// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.inlay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Tally;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.HarnessLayout.LaidWire;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.project.Meant;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;

/** The figures beside the text of a stretch of a file. Linear in its lines, but for conditions; stateless. */
public final class Inlays {

    private Inlays() {
    }

    /** The inlays between two places, in order; lengths in millimetres or inches. */
    public static List<Inlay> of(Moment moment, String file, int from, int to, Unit unit, Cancel cancel) {
        WordLines lines = moment.words(file);
        List<Inlay> inlays = new ArrayList<>();
        Map<WiringView, Map<String, LaidWire>> laid = new IdentityHashMap<>();
        FlowInlays flows = new FlowInlays(moment, lines);
        for (Line line : lines.lines()) {
            if (line.end() < from || line.offset() > to) {
                continue;
            }
            cancel.check();
            if (line.rule().equals("Wire")) {
                wire(moment, lines, line, unit, laid).ifPresent(inlays::add);
            }
            flows.at(line).ifPresent(inlays::add);
            condition(moment, lines, line).ifPresent(inlays::add);
        }
        inlays.sort(Comparator.comparingInt(Inlay::offset));
        return List.copyOf(inlays);
    }

    private static Optional<Inlay> wire(Moment moment, WordLines lines, Line line, Unit unit,
            Map<WiringView, Map<String, LaidWire>> laid) {
        Around around = Around.of(lines, line);
        Optional<WiringView> view = moment.project().wiring(around.wiring());
        if (view.isEmpty()) {
            return Optional.empty();
        }
        LaidWire wire = laid.computeIfAbsent(view.get(), key -> byName(moment, key))
                .get(around.circuit() + "/" + around.wire());
        if (wire == null || wire.lengths().isEmpty()) {
            return Optional.empty();
        }
        List<Length> cuts = wire.lengths().stream().flatMap(each -> each.cut().stream()).sorted().distinct().toList();
        if (cuts.isEmpty()) {
            return Optional.empty();
        }
        String text = cuts.size() == 1 ? shown(cuts.getFirst(), unit)
                : shown(cuts.getFirst(), unit).replace(" " + unit.symbol(), "") + " to " + shown(cuts.getLast(), unit);
        int end = line.words().getLast().end();
        return Optional.of(new Inlay(end, "cut " + text, tooltip(wire, unit)));
    }

    private static Map<String, LaidWire> byName(Moment moment, WiringView view) {
        Map<String, LaidWire> byName = new java.util.HashMap<>();
        for (LaidWire each : moment.layout(view).wires()) {
            WireView wire = each.wire();
            byName.putIfAbsent(wire.circuit().name() + "/" + wire.wire().name(), each);
        }
        return byName;
    }

    private static String tooltip(LaidWire wire, Unit unit) {
        StringBuilder text = new StringBuilder();
        for (CutLength each : wire.lengths()) {
            text.append(text.isEmpty() ? "" : "\n").append(each.cut().map(cut -> shown(cut, unit)).orElse("unknown"))
                    .append(' ').append(each.tolerance()).append(": ")
                    .append(String.join(" + ", each.terms().stream().map(CutLength.Term::toString).toList()));
        }
        return text.toString();
    }

    private static String shown(Length length, Unit unit) {
        return unit == Unit.MM ? length.show(unit, 1).replace(".0 mm", " mm") : length.show(unit, 2);
    }

    /** The number of vehicles at the last word of a condition. */
    private static Optional<Inlay> condition(Moment moment, WordLines lines, Line line) {
        Optional<Word> last = line.words().stream().filter(word -> isOfCondition(word)).reduce((one, two) -> two);
        if (last.isEmpty() || line.rule().equals("Never") || line.rule().equals("Requirement")) {
            return Optional.empty();
        }
        Optional<PlatformView> platform = Meant.platform(moment, lines, line);
        try {
            return platform.flatMap(view -> Meant.by(line, view)).map(condition -> new Inlay(end(line, last.get()),
                    words(condition), condition.tally()));
        } catch (TooManyCombinations e) {
            return Optional.empty();
        }
    }

    private static String words(Condition condition) {
        return condition.isNever() ? "no vehicle" : condition.isAlways() ? "every vehicle"
                : Tally.vehicles(condition.count());
    }

    /** Behind a bracket that closes the condition. */
    private static int end(Line line, Word last) {
        int end = last.end();
        for (Word word : line.words()) {
            end = word.offset() >= end && word.text().equals(")") ? word.end() : end;
        }
        return end;
    }

    private static boolean isOfCondition(Word word) {
        return switch (word.slot().target()) {
            case "Choice", "Member" -> true;
            default -> false;
        };
    }
}
