// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.strip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.geometry.Distance;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Run;
import org.loomwright.quantity.Length;

/**
 * Lays a harness out as a strip. Trunks run to the right from the datum, one below the other. What leaves a run hangs
 * below it, the farthest branch highest, so that no line crosses words; breakouts and barriers of a trunk have their
 * words above it in the same way. Lengths are in proportion; what is not known is drawn short and marked.
 *
 * <p>Pure; the same strip for equal trees. Takes O(n log n) for n runs and points.
 */
public final class StripLayout {

    /** Units that the longest trunk takes. */
    public static final double LENGTH = 640;

    /** Units between two lines of words. */
    public static final double ROW = 18;

    /** Room for words: units for each character. */
    public static final double CHARACTER = 6.6;

    private static final double MARGIN = 16;
    private static final double SHORT = 14;
    private static final double GAP = 6;

    private final HarnessTree tree;
    private final double scale;
    private final List<Strip.Bar> bars = new ArrayList<>();
    private final List<Strip.Post> posts = new ArrayList<>();
    private final Map<String, List<TreeRun>> leaving = new HashMap<>();
    private double bottom = MARGIN;
    private double right;

    private StripLayout(HarnessTree tree) {
        this.tree = tree;
        double longest = 1;
        for (TreeRun run : tree.runs()) {
            if (run.run().kind() == Run.Kind.BRANCH) {
                leaving.computeIfAbsent(run.start().run(), any -> new ArrayList<>()).add(run);
            }
            for (Spot spot : run.points()) {
                longest = Math.max(longest, tree.fromDatum(spot).length().map(Length::toMillimetres).orElse(0.0));
            }
        }
        this.scale = LENGTH / longest;
    }

    /** The strip of all that may exist in the vehicles of a tree. */
    public static Strip of(HarnessTree tree) {
        StripLayout layout = new StripLayout(tree);
        tree.runs().stream().filter(run -> run.run().kind() == Run.Kind.TRUNK).forEach(layout::trunk);
        layout.hang(layout.leaving.getOrDefault("", List.of()), "", MARGIN,
                layout.bars.isEmpty() ? layout.bottom : layout.bars.getFirst().y());
        return new Strip(layout.right + MARGIN, layout.bottom + MARGIN, layout.scale, layout.bars, layout.posts);
    }

    /** A point on a run, with what to write at it. */
    private record Mark(String name, boolean barrier, double x, String text) {
    }

    private void trunk(TreeRun run) {
        List<Mark> marks = new ArrayList<>();
        double end = MARGIN + SHORT;
        boolean known = true;
        double last = MARGIN;
        for (Spot spot : run.points()) {
            known &= spot.station().length().isPresent();
            last = spot.station().length().isPresent() ? MARGIN + units(spot.station()) : last + SHORT;
            marks.add(new Mark(spot.name(), false, last, spot.name() + " " + words(spot.station())));
            end = Math.max(end, last);
        }
        for (Run.Barrier barrier : run.run().barriers()) {
            double x = barrier.at().length().map(at -> MARGIN + at.toMillimetres() * scale).orElse(MARGIN);
            marks.add(new Mark(barrier.name().text(), true, x, barrier.name().text() + " "
                    + barrier.at().value().map(Object::toString).orElse("unknown") + ", barrier"));
            end = Math.max(end, x);
        }
        marks.sort(Comparator.comparingDouble(Mark::x).reversed());
        double y = bottom + (marks.size() + 1) * ROW;
        for (int i = 0; i < marks.size(); i++) {
            Mark mark = marks.get(i);
            posts.add(new Strip.Post(mark.name(), run.name(), mark.barrier(), mark.x(), y, y - (i + 1) * ROW,
                    mark.text()));
            wide(mark.x() + GAP, mark.text());
        }
        bars.add(new Strip.Bar(run.name(), true, known, MARGIN, end, y, y, run.name()));
        wide(end + GAP, run.name());
        bottom = y;
        hang(leaving.getOrDefault(run.name(), List.of()), run.name(), MARGIN, y);
        bottom += ROW;
    }

    /** Hangs branches on a run that begins at x and lies on a level, the farthest one highest. */
    private void hang(List<TreeRun> branches, String run, double x, double y) {
        Map<TreeRun, Double> places = new HashMap<>();
        branches.forEach(branch -> places.put(branch, x + where(branch, run)));
        branches.stream().sorted(Comparator.comparing((TreeRun branch) -> -places.get(branch))).forEach(branch -> {
            double from = places.get(branch);
            bottom += ROW;
            double level = bottom;
            Spot last = branch.points().getLast();
            boolean known = last.station().length().isPresent() && (run.isEmpty()
                    || branch.start().station().length().isPresent());
            double end = from + Math.max(SHORT, known ? units(last.station()) : SHORT);
            String text = branch.name() + branch.run().to().map(to -> " to " + to.text()).orElse("") + ", "
                    + words(last.station());
            bars.add(new Strip.Bar(branch.name(), false, known, from, end, level, y, text));
            wide(end + GAP, text);
            hang(leaving.getOrDefault(branch.name(), List.of()), branch.name(), from, level);
        });
    }

    /** How far along a run a branch leaves it; where that is not known, with the point drawn before it. */
    private double where(TreeRun branch, String run) {
        for (Strip.Post post : posts) {
            if (post.run().equals(run) && post.name().equals(branch.start().name())) {
                return post.x() - MARGIN;
            }
        }
        return branch.start().station().length().isPresent() ? units(branch.start().station()) : 0;
    }

    private double units(Distance distance) {
        return distance.length().map(length -> length.toMillimetres() * scale).orElse(0.0);
    }

    private static String words(Distance distance) {
        return distance.length().map(Object::toString).orElse("unknown");
    }

    private void wide(double x, String text) {
        right = Math.max(right, x + text.length() * CHARACTER);
    }
}
