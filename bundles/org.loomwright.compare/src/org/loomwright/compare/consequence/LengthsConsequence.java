// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Labels;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.geometry.Copper;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.geometry.HarnessLayout.LaidWire;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Progress;

/** Which wires of a harness are cut to another length, and what that means in copper. */
public final class LengthsConsequence implements Consequence {

    private final Copper copper;

    /** @param copper how copper is weighed */
    public LengthsConsequence(Copper copper) {
        this.copper = copper;
    }

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        Matching matching = revision.comparison().matching();
        Tally tally = new Tally();
        List<Line> copperLines = new ArrayList<>();
        for (WiringView before : revision.old().harnesses()) {
            Optional<WiringView> after = matching.after(new ItemId(Sort.WIRING, "", before.name()))
                    .flatMap(id -> revision.now().wiring(id.name())).filter(view -> view.wiring().isHarness());
            if (after.isPresent()) {
                progress.report("comparing the lengths of " + after.get().name(), 0, 1);
                cancel.check();
                Map<ItemId, LaidWire> then = wires(before, revision.old());
                Map<ItemId, LaidWire> here = wires(after.get(), revision.now());
                then.forEach((id, wire) -> matching.after(id).map(here::get)
                        .ifPresent(partner -> tally.wire(matching.after(id).get(), wire, partner)));
                copper(after.get().name(), then, here).ifPresent(copperLines::add);
            }
        }
        List<Line> lines = new ArrayList<>(copperLines);
        lines.addAll(tally.lines());
        return new Effect("lengths", "cut lengths: " + tally.longer + " longer, " + tally.shorter + " shorter", lines,
                Optional.empty());
    }

    private static Map<ItemId, LaidWire> wires(WiringView view, Project project) {
        Map<ItemId, LaidWire> wires = new TreeMap<>();
        for (LaidWire laid : HarnessLayout.of(view, project.parts()).wires()) {
            WireView wire = laid.wire();
            wires.putIfAbsent(new ItemId(Sort.WIRE, wire.owner() + "/" + wire.circuit().name().text(),
                    wire.wire().name().text()), laid);
        }
        return wires;
    }

    /** The copper of all wires that may be on the board, each at its heaviest. */
    private Optional<Line> copper(String harness, Map<ItemId, LaidWire> before, Map<ItemId, LaidWire> after) {
        String then = grams(before);
        String here = grams(after);
        return then.equals(here) ? Optional.empty() : Optional.of(new Line(Direction.OTHER, harness,
                "copper with every wire on the board", then + " g", here + " g", "", Optional.empty()));
    }

    private String grams(Map<ItemId, LaidWire> wires) {
        double grams = 0;
        for (LaidWire laid : wires.values()) {
            Length longest = laid.lengths().stream().flatMap(each -> each.cut().stream())
                    .max(Comparator.naturalOrder()).orElse(Length.ZERO);
            grams += laid.wire().sizes().stream().mapToDouble(size -> copper.grams(size.value(), longest))
                    .max().orElse(0);
        }
        return BigDecimal.valueOf(grams).setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    /** Collects the differences; counts wires. */
    private static final class Tally {

        private final Map<Line, Length> found = new LinkedHashMap<>();
        private int longer;
        private int shorter;

        void wire(ItemId id, LaidWire before, LaidWire after) {
            Map<String, Optional<Length>> then = lengths(before);
            Map<String, Optional<Length>> here = lengths(after);
            if (then.equals(here)) {
                return;
            }
            Length difference = longest(here).minus(longest(then));
            longer += difference.compareTo(Length.ZERO) > 0 ? 1 : 0;
            shorter += difference.isNegative() ? 1 : 0;
            if (then.keySet().equals(here.keySet())) {
                here.forEach((vehicles, length) -> {
                    if (!length.equals(then.get(vehicles))) {
                        add(id, words(then.get(vehicles)), words(length), vehicles, difference);
                    }
                });
            } else {
                add(id, all(then), all(here), "", difference);
            }
        }

        private void add(ItemId id, String before, String after, String vehicles, Length difference) {
            found.put(new Line(Direction.OTHER, "wire " + Labels.of(id), "", before, after, vehicles,
                    Optional.empty()), difference.abs().negated());
        }

        /** The largest difference first. */
        List<Line> lines() {
            return found.entrySet().stream().sorted(Map.Entry.comparingByValue()).map(Map.Entry::getKey).toList();
        }

        private static Length longest(Map<String, Optional<Length>> lengths) {
            return lengths.values().stream().flatMap(Optional::stream).max(Comparator.naturalOrder())
                    .orElse(Length.ZERO);
        }

        private static Map<String, Optional<Length>> lengths(LaidWire laid) {
            Map<String, Optional<Length>> lengths = new TreeMap<>();
            for (CutLength each : laid.lengths()) {
                lengths.put(each.when().equals(laid.wire().when()) ? "" : words(each.when()), each.cut());
            }
            return lengths;
        }

        private static String words(Condition when) {
            try {
                return when.words();
            } catch (TooManyCombinations e) {
                return "some vehicles";
            }
        }

        private static String words(Optional<Length> length) {
            return length.map(Length::toString).orElse("unknown");
        }

        private static String all(Map<String, Optional<Length>> lengths) {
            List<String> words = new ArrayList<>();
            lengths.forEach((vehicles, length) -> words.add(words(length)
                    + (vehicles.isEmpty() ? "" : " when " + vehicles)));
            return words.isEmpty() ? "no route" : String.join(", ", words);
        }
    }
}
