// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Bundles;
import org.loomwright.geometry.Section;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView.SpliceView;
import org.loomwright.quantity.Length;
import org.loomwright.sheets.board.Board;
import org.loomwright.sheets.board.BoardLayout;
import org.loomwright.sheets.board.Strand;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Words;

/**
 * A harness on a board: its tree laid out, and what is marked on it.
 *
 * @param harness the harness
 * @param board   the tree on the board
 * @param strands trunks and branches, in source order
 * @param ends    what is at the end of each strand, by its name
 * @param marks   what is marked along the strands
 * @param covers  what is covered
 * @param bundles thickness of the stretches
 * @param guessed strands whose length, or the station of whose start, nobody knows; they are drawn dashed
 */
record Boarding(LaidHarness harness, Board board, List<Strand> strands, Map<String, List<String>> ends,
        List<Mark> marks, List<Cover> covers, List<Bundle> bundles, Set<String> guessed) {

    /** Drawn in place of a length that nobody knows, in mm. */
    private static final double GUESS = 100;
    private static final double COLUMN = 30;

    /** Sorts of marks. */
    enum Sort {
        DATUM, BREAKOUT, SPLICE, CLIP, COVER_BEGIN, COVER_END, BARRIER
    }

    /** Something at a station of a strand. */
    record Mark(Sort sort, String strand, double station, String text) {
    }

    /** A covering over a stretch of one strand. */
    record Cover(String name, String part, String strand, double from, double to) {
    }

    /** A stretch of a strand with its thickness in mm; 0 where it is not known. */
    record Bundle(String strand, double from, double to, double diameter, int wires) {
    }

    static Boarding of(LaidHarness harness, double width, double height) {
        Set<String> guessed = new HashSet<>();
        List<Strand> strands = new ArrayList<>();
        Map<String, TreeRun> runs = new HashMap<>();
        for (TreeRun run : harness.tree().runs()) {
            if (run.when().and(harness.vehicles()).isNever()) {
                continue;
            }
            runs.put(run.name(), run);
            Optional<Double> station = mm(run.start().station().length());
            Optional<Double> length = run.points().isEmpty() ? Optional.of(0.0)
                    : mm(run.points().getLast().station().length());
            if (station.isEmpty() || length.isEmpty()) {
                guessed.add(run.name());
            }
            strands.add(new Strand(run.name(), run.start().run(), station.orElse(0.0), length.orElse(GUESS)));
        }
        strands.removeIf(each -> !each.parent().isEmpty() && !runs.containsKey(each.parent()));
        Bundles.Result result = new Bundles().of(harness.tree(), harness.routed(), harness.vehicles());
        List<Bundle> bundles = new ArrayList<>();
        double thickest = 0;
        for (Section section : result.sections()) {
            Optional<Double> from = mm(section.from().station().length());
            Optional<Double> to = mm(section.to().station().length());
            if (from.isPresent() && to.isPresent() && to.get() > from.get() && !section.wires().isEmpty()) {
                bundles.add(new Bundle(section.run(), from.get(), to.get(),
                        section.size().map(size -> size.diameter().mm()).orElse(0.0), section.wires().size()));
            }
            thickest = Math.max(thickest, section.wires().stream().flatMap(each -> each.diameter().stream())
                    .mapToDouble(each -> each.mm()).max().orElse(0));
        }
        double radius = harness.view().platform().limits().si(Limit.BEND_RADIUS) * thickest;
        Board board = new BoardLayout(COLUMN, radius).lay(strands, width, height);
        return new Boarding(harness, board, List.copyOf(strands), ends(harness), marks(harness, runs),
                covers(harness), bundles, guessed);
    }

    private static Optional<Double> mm(Optional<Length> length) {
        return length.map(Length::toMillimetres);
    }

    /** Connectors, studs and devices by the strand at whose end they are; those at the datum under no name. */
    private static Map<String, List<String>> ends(LaidHarness harness) {
        Map<String, List<String>> ends = new HashMap<>();
        for (ConnectorView each : harness.view().connectors().values()) {
            end(harness, each.cavity(""), each.when(), each.name(), ends);
        }
        harness.view().studs().values().forEach(each -> end(harness, each.node(), each.when(),
                each.stud().name().text(), ends));
        harness.view().devices().values().forEach(each -> end(harness, each.pin(""), each.when(), each.name(), ends));
        return ends;
    }

    private static void end(LaidHarness harness, Node node, Condition when, String name,
            Map<String, List<String>> ends) {
        for (Case<Spot> spot : harness.spots().of(node)) {
            if (!spot.when().and(when).excludes(harness.vehicles())) {
                List<String> there = ends.computeIfAbsent(spot.value().run(), any -> new ArrayList<>());
                if (!there.contains(name)) {
                    there.add(name);
                }
            }
        }
    }

    private static List<Mark> marks(LaidHarness harness, Map<String, TreeRun> runs) {
        List<Mark> marks = new ArrayList<>();
        for (TreeRun run : runs.values().stream().sorted(java.util.Comparator.comparing(TreeRun::name)).toList()) {
            for (Spot point : run.points()) {
                if (point.kind() == Spot.Kind.BREAKOUT) {
                    mm(point.station().length()).ifPresent(at -> marks.add(new Mark(Sort.BREAKOUT, run.name(), at,
                            point.name() + " " + Words.figure(at, 1))));
                }
            }
            run.run().barriers().forEach(each -> each.at().length().ifPresent(at -> marks.add(new Mark(Sort.BARRIER,
                    run.name(), at.toMillimetres(), each.name().text() + " " + Words.mm(at)))));
        }
        Map<String, List<String>> splices = new java.util.LinkedHashMap<>();
        for (SpliceView splice : harness.view().splices().values()) {
            for (Case<Spot> spot : harness.spots().of(splice.node())) {
                Optional<Double> at = mm(spot.value().station().length());
                if (at.isPresent() && !splice.when().excludes(harness.vehicles())) {
                    splices.computeIfAbsent(spot.value().run() + "\n" + at.get(), any -> new ArrayList<>())
                            .add(splice.splice().name().text());
                }
            }
        }
        splices.forEach((key, names) -> marks.add(new Mark(Sort.SPLICE, key.split("\n")[0],
                Double.parseDouble(key.split("\n")[1]), String.join(" ", names))));
        for (Wiring.Placed placed : harness.view().wiring().placed()) {
            if (!harness.resolve(placed.when()).isNever()) {
                placed(harness, placed, marks);
            }
        }
        return List.copyOf(marks);
    }

    private static void placed(LaidHarness harness, Wiring.Placed placed, List<Mark> marks) {
        String name = placed.name().text();
        boolean opening = harness.part(placed.part().text()).filter(each -> each.kind() == Part.Kind.OPENING)
                .isPresent();
        harness.tree().spots(placed.from()).stream().findFirst().map(Case::value).ifPresent(spot ->
                mm(spot.station().length()).ifPresent(at -> marks.add(new Mark(placed.to().isPresent()
                        ? Sort.COVER_BEGIN : opening ? Sort.BARRIER : Sort.CLIP, spot.run(), at, name + " "
                                + Words.figure(at, 1)))));
        placed.to().flatMap(to -> harness.tree().spots(to).stream().findFirst()).map(Case::value).ifPresent(spot ->
                mm(spot.station().length()).ifPresent(at -> marks.add(new Mark(Sort.COVER_END, spot.run(), at, name
                        + " ends " + Words.figure(at, 1)))));
    }

    private static List<Cover> covers(LaidHarness harness) {
        List<Cover> covers = new ArrayList<>();
        for (Wiring.Placed placed : harness.view().wiring().placed()) {
            Optional<Spot> from = harness.tree().spots(placed.from()).stream().findFirst().map(Case::value);
            Optional<Spot> to = placed.to().flatMap(each -> harness.tree().spots(each).stream().findFirst())
                    .map(Case::value);
            if (from.isEmpty() || to.isEmpty() || harness.resolve(placed.when()).isNever()
                    || !from.get().run().equals(to.get().run())) {
                continue;
            }
            Optional<Double> begin = mm(from.get().station().length());
            Optional<Double> end = mm(to.get().station().length());
            if (begin.isPresent() && end.isPresent()) {
                covers.add(new Cover(placed.name().text(), placed.part().text(), from.get().run(),
                        Math.min(begin.get(), end.get()), Math.max(begin.get(), end.get())));
            }
        }
        return List.copyOf(covers);
    }

    /** The way of a strand. */
    List<org.loomwright.sheets.document.Point> path(String strand) {
        return board.paths().get(strand);
    }
}
