// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.loomwright.quantity.Length;

/**
 * The direct mixed-integer model of a harness without branches on branches, in the LP format that general solvers read:
 * a station and a length for each place in grid steps, and for each vehicle and place one binary for the side of the
 * factory's breakout on which ours lies; with slack, for each vehicle and breakout the tuck. Lengths in millimetres.
 */
final class DirectModel {

    private static final double MM = 1e6;

    private final PlanProblem problem;
    private final StringBuilder rows = new StringBuilder();
    private final List<String> binaries = new ArrayList<>();
    private final List<String> integers = new ArrayList<>();
    private final StringBuilder copper = new StringBuilder();
    private final StringBuilder reach = new StringBuilder();
    /** The same where a jumper makes up for what is missing, and that each branch reaches in some vehicle. */
    private final StringBuilder eased = new StringBuilder();
    private final List<String> jumpers = new ArrayList<>();
    private double slackSum;

    DirectModel(PlanProblem problem) {
        this.problem = problem;
        List<PlanStop> stops = problem.trunks().getFirst().stops();
        double grid = problem.grid() / MM;
        for (int k = 0; k < stops.size(); k++) {
            PlanStop stop = stops.get(k);
            PlanBranch branch = stop.branches().getFirst();
            String before = k == 0 ? "" : " - " + grid + " t" + (k - 1);
            row(grid + " t" + k + before, ">=", stop.leastGap() / MM);
            long next = k + 1 < stops.size() ? stops.get(k + 1).weight() : 0;
            copper.append(" + ").append((stop.weight() - next) * grid).append(" t").append(k).append(" + ")
                    .append(branch.weight() * grid).append(" c").append(k);
            integers.add("t" + k);
            integers.add("c" + k);
            tucks(k, stop.slack() / MM);
            branch.asks().forEach(ask -> ask(branch, ask, grid, integers.size() / 2 - 1));
            int first = jumpers.size() - branch.asks().size();
            row(eased, String.join(" + ", jumpers.subList(first, jumpers.size())), "<=", branch.asks().size() - 1);
        }
    }

    /** In each vehicle the tuck grows along the trunk, by no more than the slack. */
    private void tucks(int k, double slack) {
        slackSum += slack;
        for (int v = 0; v < problem.vehicles() && slackSum > 0; v++) {
            String before = k == 0 || slackSum == slack ? "" : " - s" + v + "x" + (k - 1);
            row("s" + v + "x" + k + before, ">=", 0);
            row("s" + v + "x" + k + before, "<=", slack);
        }
    }

    private void ask(PlanBranch branch, Ask ask, double grid, int k) {
        String tuck = "s" + ask.vehicle() + "x" + k;
        String t = grid + " t" + k + (slackSum > 0 ? " - " + tuck : "");
        String minusT = " - " + grid + " t" + k + (slackSum > 0 ? " + " + tuck : "");
        String c = grid + " c" + k;
        double s = ask.station() / MM;
        double minus = branch.made().of(new Length(0)).minus().nanometres() / MM;
        double plus = branch.made().of(new Length(0)).plus().nanometres() / MM;
        row(reach, c + minusT, ">=", minus - s + ask.reach() / MM);
        row(reach, c + " + " + t, ">=", minus + s + ask.reach() / MM);
        String jumper = "w" + ask.vehicle() + "x" + k;
        jumpers.add(jumper);
        double most = (branch.backLimit() + ask.reach()) / MM + minus;
        row(eased, c + minusT + " + " + most + " " + jumper, ">=", minus - s + ask.reach() / MM);
        row(eased, c + " + " + t + " + " + most + " " + jumper, ">=", minus + s + ask.reach() / MM);
        row(t, "<=", s + branch.backLimit() / MM);
        row(t, ">=", s - branch.backLimit() / MM);
        String side = "y" + ask.vehicle() + "x" + k;
        binaries.add(side);
        double spare = ask.spare() / MM;
        // the two sides differ by twice the run along the trunk, which the places of all vehicles limit
        double first = branch.asks().stream().mapToLong(Ask::station).max().orElse(0) / MM;
        double last = branch.asks().stream().mapToLong(Ask::station).min().orElse(0) / MM + slackSum;
        double back = branch.backLimit() / MM;
        double before = 2 * Math.clamp(s - first + back + slackSum, 0, back);
        double behind = 2 * Math.clamp(last + back - s, 0, back);
        row(c + minusT + " - e + " + before + " " + side, "<=", before - plus - s + spare);
        row(c + " + " + t + " - e - " + behind + " " + side, "<=", s - plus + spare);
    }

    private void row(String left, String relation, double right) {
        row(rows, left, relation, right);
    }

    private static void row(StringBuilder rows, String left, String relation, double right) {
        rows.append(' ').append(left).append(' ').append(relation).append(' ').append(right).append('\n');
    }

    /** Minimises the largest excess; or, under a limit of it in nanometres, copper in mg/m times millimetres. */
    String text(OptionalLong limit) {
        long most = problem.trunks().getFirst().stops().stream().flatMap(stop -> stop.branches().stream())
                .mapToLong(PlanBranch::excessLimit).min().orElse(0);
        return text(limit.isEmpty() ? " e" : copper.toString(), reach, limit.orElse(most), binaries);
    }

    /** Minimises the number of jumpers under a limit of the excess in nanometres. */
    String jumpers(long limit) {
        return text(" " + String.join(" + ", jumpers), eased, limit, Stream.concat(binaries.stream(), jumpers.stream())
                .toList());
    }

    private String text(String objective, StringBuilder more, long limit, List<String> choices) {
        return "Minimize\n obj:" + objective + "\nSubject To\n" + rows + more + "Bounds\n e <= " + limit / MM
                + "\nGenerals\n " + String.join(" ", integers) + "\nBinaries\n " + String.join("\n ", choices)
                + "\nEnd\n";
    }
}
