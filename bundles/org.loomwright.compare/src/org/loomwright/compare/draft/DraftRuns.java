// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.HarnessTree;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.quantity.Length;

/**
 * The runs of a draft: a branch for each place that a drawing serves, leaving where the first drawing that serves it
 * says; breakouts in the order of their mean stations. Figures are left open.
 */
final class DraftRuns {

    private final Cover cover;
    private final NameBook names;
    private final List<Choice> choices;
    private final Set<String> turned;
    /** By place and number among the branches there, the one that serves it as well. */
    private final Map<String, String> joined;
    private final Map<String, List<Breakout>> byRun = new LinkedHashMap<>();
    private final Map<String, Breakout> breakouts = new LinkedHashMap<>();
    private final List<Branch> branches = new ArrayList<>();
    private final List<Map<String, String>> points = new ArrayList<>();
    private final List<String[]> contested = new ArrayList<>();

    /** A breakout of ours; by drawing the stations that the factory's have. */
    private static final class Breakout {

        private final String name;
        private final Map<Integer, List<Long>> stations = new HashMap<>();

        private Breakout(String name) {
            this.name = name;
        }

        private double mean() {
            return stations.values().stream().flatMap(List::stream).mapToLong(each -> each).average().orElse(0);
        }

        private Optional<Boolean> isBehind(Breakout other, int column) {
            List<Long> own = stations.getOrDefault(column, List.of());
            List<Long> theirs = other.stations.getOrDefault(column, List.of());
            if (own.isEmpty() || theirs.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(own.stream().mapToLong(each -> each).average().orElseThrow()
                    > theirs.stream().mapToLong(each -> each).average().orElseThrow());
        }
    }

    private static final class Branch {

        private final String key;
        private final String name;
        private final String from;
        private final String to;
        private Condition has;

        private Branch(String key, String name, String from, String to, Condition has) {
            this.key = key;
            this.name = name;
            this.from = from;
            this.to = to;
            this.has = has;
        }
    }

    /**
     * @param turned names of breakouts that are put before the one before them
     * @param joined branches of a draft without it that become one: the key of each by the key of the one
     */
    DraftRuns(Cover cover, NameBook names, List<Choice> choices, Set<String> turned, Map<String, String> joined) {
        this.cover = cover;
        this.names = names;
        this.choices = choices;
        this.turned = turned;
        this.joined = joined;
        List<HarnessTree> trees = cover.views.stream().map(HarnessTree::of).toList();
        boolean single = trees.stream().allMatch(tree -> tree.runs().stream()
                .filter(run -> run.run().kind() == Run.Kind.TRUNK).count() <= 1);
        for (int c = 0; c < trees.size(); c++) {
            points.add(new HashMap<>());
            trunks(trees.get(c), c, single);
        }
        for (int c = 0; c < trees.size(); c++) {
            Map<String, Integer> count = new HashMap<>();
            for (TreeRun run : trees.get(c).runs()) {
                if (run.run().kind() == Run.Kind.BRANCH) {
                    String place = run.run().to().map(Ref::text).orElse("");
                    String key = place + "\n" + count.merge(place, 1, Integer::sum);
                    branch(run, place, joined.getOrDefault(key, key), trees.get(c), c);
                }
            }
        }
        byRun.values().forEach(this::order);
    }

    private void trunks(HarnessTree tree, int column, boolean single) {
        for (TreeRun run : tree.runs()) {
            if (run.run().kind() == Run.Kind.TRUNK) {
                String ours = single && !byRun.isEmpty() ? byRun.keySet().iterator().next() : run.name();
                if (!byRun.containsKey(ours)) {
                    names.take(ours);
                    byRun.put(ours, new ArrayList<>());
                }
                points.get(column).put(run.name(), ours);
            }
        }
    }

    private void branch(TreeRun run, String place, String key, HarnessTree tree, int column) {
        Condition has = cover.in(column, run.run().when());
        Optional<Branch> known = branches.stream().filter(each -> each.key.equals(key)).findFirst();
        if (known.isEmpty()) {
            String from = run.start().kind() == Spot.Kind.BREAKOUT ? breakout(run.start(), tree, column)
                    : run.start().name();
            Branch branch = new Branch(key, names.take(run.name()), from, place, has);
            byRun.put(branch.name, new ArrayList<>());
            branches.add(branch);
            known = Optional.of(branch);
        } else {
            known.get().has = known.get().has.or(has);
        }
        points.get(column).put(run.name(), known.get().name);
        Breakout ours = breakouts.get(known.get().from);
        if (ours != null) {
            points.get(column).putIfAbsent(run.start().name(), ours.name);
            run.start().station().length().map(Length::nanometres).ifPresent(station -> ours.stations
                    .computeIfAbsent(column, c -> new ArrayList<>()).add(station));
        }
    }

    /** Our breakout for one of a drawing: that of the same name on the same run of ours, else a new one. */
    private String breakout(Spot theirs, HarnessTree tree, int column) {
        String run = points.get(column).getOrDefault(theirs.run(), "");
        String known = points.get(column).get(theirs.name());
        if (known != null && breakouts.containsKey(known)) {
            return known;
        }
        List<Breakout> on = byRun.computeIfAbsent(run, key -> new ArrayList<>());
        Breakout same = on.stream().filter(each -> each.name.equals(theirs.name())).findFirst().orElse(null);
        if (same == null) {
            same = new Breakout(names.take(theirs.name()));
            on.add(same);
            breakouts.put(same.name, same);
        }
        points.get(column).put(theirs.name(), same.name);
        return same.name;
    }

    private void order(List<Breakout> on) {
        on.sort(Comparator.comparingDouble(Breakout::mean));
        for (int i = 1; i < on.size(); i++) {
            Breakout one = on.get(i - 1);
            Breakout other = on.get(i);
            List<Integer> against = new ArrayList<>();
            for (int c = 0; c < cover.views.size(); c++) {
                if (one.isBehind(other, c).equals(Optional.of(true))) {
                    against.add(c);
                }
            }
            if (!against.isEmpty()) {
                contested.add(new String[] {one.name, other.name});
                boolean turn = turned.contains(other.name);
                if (turn) {
                    on.set(i - 1, other);
                    on.set(i, one);
                }
                choices.add(new Choice(Choice.Kind.ORDER, turn ? other.name : one.name, cover.names(against)
                        + (against.size() == 1 ? " has " : " have ") + one.name + " behind " + other.name
                        + ", all others before it; planned with " + (turn ? other.name : one.name) + " first"));
            }
        }
    }

    /** The second of each two breakouts whose order the drawings do not agree about. */
    List<String> contested() {
        return contested.stream().map(pair -> pair[1]).toList();
    }

    /** What makes some of our branches one with the first of them. */
    Map<String, String> joined(Set<String> names) {
        List<String> keys = branches.stream().filter(each -> names.contains(each.name)).map(each -> each.key).toList();
        return keys.stream().skip(1).collect(Collectors.toMap(each -> each, each -> keys.getFirst()));
    }

    /** Our name of a point or run of a drawing; its own where we have none. */
    String point(int column, String theirs) {
        return points.get(column).getOrDefault(theirs, theirs);
    }

    /** Whether we have such a point or run. */
    boolean has(int column, String theirs) {
        return points.get(column).containsKey(theirs);
    }

    void write(StringBuilder out) {
        for (Map.Entry<String, List<Breakout>> each : byRun.entrySet()) {
            if (branches.stream().noneMatch(branch -> branch.name.equals(each.getKey())) && !each.getValue()
                    .isEmpty()) {
                out.append("    trunk ").append(each.getKey()).append(" {\n");
                breakouts(each.getValue(), out);
                out.append("    }\n");
            }
        }
        for (Branch branch : branches) {
            out.append("    branch ").append(branch.name).append(" from ").append(branch.from).append(" to ")
                    .append(branch.to);
            List<Breakout> on = byRun.get(branch.name);
            out.append(on.isEmpty() ? "\n" : " {\n");
            if (!on.isEmpty()) {
                breakouts(on, out);
                out.append("    }\n");
            }
        }
        for (Branch branch : branches) {
            Condition without = cover.whole.minus(branch.has);
            if (!without.isNever()) {
                out.append("    // Not in every vehicle. Say where it is parked, and how long it may be for that.\n")
                        .append("    cap ").append(branch.name).append(" when ").append(cover.words(without))
                        .append('\n');
                choices.add(new Choice(Choice.Kind.PARTIAL, branch.name, "for " + cover.words(branch.has)
                        + "; capped elsewhere"));
            }
        }
    }

    private static void breakouts(List<Breakout> on, StringBuilder out) {
        on.forEach(each -> out.append("        breakout ").append(each.name).append(" at unknown\n"));
    }
}
