// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.WiringView;

/**
 * The runs of a written harness for those of a draft: the branch to the same place, the breakout from which a branch to
 * the same place leaves. What it has not is added, with its figures open.
 */
final class TakenRuns {

    private final TakingOver job;
    private final Map<String, String> branches = new HashMap<>();
    private final Map<String, String> breakouts = new HashMap<>();
    private final Map<String, Condition> uncapped = new LinkedHashMap<>();

    TakenRuns(TakingOver job) {
        this.job = job;
    }

    /** Our branches for some of the draft's, added in the order in which they leave. */
    void prepare(Collection<String> theirs) {
        List<String> order = job.draft().wiring().runs().stream().flatMap(run -> run.breakouts().stream())
                .map(each -> each.name().text()).toList();
        theirs.stream().map(name -> job.draft().run(name).orElseThrow())
                .sorted(Comparator.comparingInt(run -> order.indexOf(run.from().map(Ref::text).orElse(""))))
                .forEach(run -> branch(run.name().text(), job.none()));
    }

    /** Our branch for one of the draft's, added where there is none; it is not capped in some vehicles. */
    String branch(String theirs, Condition used) {
        String known = branches.get(theirs);
        if (known == null) {
            Run run = job.draft().run(theirs).orElseThrow();
            Optional<Run> same = job.ours().wiring().runs(Run.Kind.BRANCH).stream()
                    .filter(each -> place(each).equals(place(run))).findFirst();
            known = same.map(each -> each.name().text()).orElseGet(() -> added(run));
            branches.put(theirs, known);
        }
        uncapped.merge(known, used, Condition::or);
        return known;
    }

    /** Our name for a point of the draft: a breakout, the end of a branch, or the datum. */
    String point(String theirs) {
        if (job.draft().run(theirs).filter(run -> run.kind() == Run.Kind.BRANCH).isPresent()) {
            return branch(theirs, job.none());
        }
        return owner(job.draft(), theirs).isPresent() ? breakout(theirs) : theirs;
    }

    /** Takes the vehicles in which a branch is used now out of what is capped. */
    void uncap() {
        for (Ours.Cap cap : job.ours().wiring().ours().caps()) {
            Condition used = uncapped.get(cap.branch().text());
            Condition capped = job.ours().platform().vehicles().resolve(cap.when()).condition().and(job.cover().whole);
            if (used != null && !used.excludes(capped)) {
                job.narrow(cap.span(), cap.when(), capped.minus(used));
            }
        }
    }

    private static String place(Run run) {
        return run.to().map(Ref::text).orElse("");
    }

    private static Optional<Run> owner(WiringView view, String breakout) {
        return view.wiring().runs().stream().filter(run -> run.breakouts().stream().anyMatch(each -> each.name().text()
                .equals(breakout))).findFirst();
    }

    private String added(Run run) {
        String name = job.names().take(run.name().text());
        String from = run.from().map(Ref::text).orElseThrow();
        List<String> lines = new ArrayList<>();
        String words = "goes to " + place(run) + ", which no branch served";
        job.choose(Choice.Kind.PARTIAL, name, words);
        lines.add("// Taken over: " + name + " " + words + ".");
        lines.add("branch " + name + " from " + (owner(job.draft(), from).isPresent() ? breakout(from) : from)
                + " to " + place(run));
        Condition capped = job.cover().whole.vehicles().anyOf(job.draft().wiring().ours().caps().stream()
                .filter(cap -> cap.branch().text().equals(run.name().text()))
                .map(cap -> job.draft().platform().vehicles().resolve(cap.when()).condition()).toList())
                .and(job.cover().whole);
        if (!capped.isNever()) {
            lines.add("// Not in every vehicle. Say where it is parked, and how long it may be for that.");
            lines.add("cap " + name + " when " + job.cover().words(capped));
        }
        List<Run> runs = job.ours().wiring().runs();
        job.additions().after(runs.getLast().span(), lines);
        return name;
    }

    private String breakout(String theirs) {
        String known = breakouts.get(theirs);
        if (known == null) {
            known = twin(theirs).orElseGet(() -> addedBreakout(theirs));
            breakouts.put(theirs, known);
        }
        return known;
    }

    /** The breakout from which we go to where the draft goes from its own; else the one of that name. */
    private Optional<String> twin(String theirs) {
        for (Run run : job.draft().wiring().runs(Run.Kind.BRANCH)) {
            if (run.from().filter(ref -> ref.text().equals(theirs)).isPresent()) {
                Optional<String> from = job.ours().wiring().runs(Run.Kind.BRANCH).stream()
                        .filter(each -> place(each).equals(place(run))).flatMap(each -> each.from().stream())
                        .map(Ref::text).filter(name -> owner(job.ours(), name).isPresent()).findFirst();
                if (from.isPresent()) {
                    return from;
                }
            }
        }
        return owner(job.ours(), theirs).map(run -> theirs);
    }

    private String addedBreakout(String theirs) {
        Run run = owner(job.draft(), theirs).orElseThrow();
        Optional<Run> on = run.kind() == Run.Kind.BRANCH ? job.ours().run(branch(run.name().text(), job.none()))
                : job.ours().run(run.name().text()).filter(each -> each.kind() == Run.Kind.TRUNK)
                        .or(() -> job.ours().wiring().runs(Run.Kind.TRUNK).stream().findFirst());
        if (on.isEmpty()) {
            job.choose(Choice.Kind.LEFT, theirs, "no run of ours is there to take this breakout");
            return theirs;
        }
        String name = job.names().take(theirs);
        String line = "breakout " + name + " at unknown";
        Optional<Run.Breakout> before = Optional.empty();
        for (Run.Breakout each : run.breakouts()) {
            if (each.name().text().equals(theirs)) {
                break;
            }
            Optional<Run.Breakout> own = twin(each.name().text()).flatMap(wanted -> on.get().breakouts().stream()
                    .filter(mine -> mine.name().text().equals(wanted)).findFirst());
            before = own.isPresent() ? own : before;
        }
        job.choose(Choice.Kind.PARTIAL, name, "a breakout that no branch left from");
        String why = "// Taken over: nothing left the trunk here.";
        if (before.isPresent()) {
            job.additions().after(before.get().span(), List.of(why, line));
        } else if (!on.get().breakouts().isEmpty()) {
            job.additions().before(on.get().breakouts().getFirst().span(), List.of(why, line));
        } else {
            job.additions().into(on.get().span(), List.of(why, line));
        }
        return name;
    }
}
