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

    private final WiringView ours;
    private final WiringView draft;
    private final NameBook names;
    private final Cover cover;
    private final Additions additions;
    private final Map<String, String> branches = new HashMap<>();
    private final Map<String, String> breakouts = new HashMap<>();
    private final Map<String, Condition> uncapped = new LinkedHashMap<>();

    /** @param cover the vehicles that are covered */
    TakenRuns(WiringView ours, WiringView draft, NameBook names, Cover cover, Additions additions) {
        this.ours = ours;
        this.draft = draft;
        this.names = names;
        this.cover = cover;
        this.additions = additions;
    }

    /** Our branches for some of the draft's, added in the order in which they leave. */
    void prepare(Collection<String> theirs, List<Choice> choices) {
        List<String> order = draft.wiring().runs().stream().flatMap(run -> run.breakouts().stream())
                .map(each -> each.name().text()).toList();
        theirs.stream().map(name -> draft.run(name).orElseThrow()).sorted(Comparator.comparingInt(run -> order.indexOf(
                run.from().map(Ref::text).orElse("")))).forEach(run -> branch(run.name().text(), cover.whole.vehicles()
                        .none(), choices));
    }

    /** Our branch for one of the draft's, added where there is none; it is not capped in some vehicles. */
    String branch(String theirs, Condition used, List<Choice> choices) {
        String known = branches.get(theirs);
        if (known == null) {
            Run run = draft.run(theirs).orElseThrow();
            Optional<Run> same = ours.wiring().runs(Run.Kind.BRANCH).stream().filter(each -> place(each).equals(place(
                    run))).findFirst();
            known = same.map(each -> each.name().text()).orElseGet(() -> added(run, choices));
            branches.put(theirs, known);
        }
        uncapped.merge(known, used, Condition::or);
        return known;
    }

    /** Our name for a point of the draft: a breakout, the end of a branch, or the datum. */
    String point(String theirs, List<Choice> choices) {
        if (draft.run(theirs).filter(run -> run.kind() == Run.Kind.BRANCH).isPresent()) {
            return branch(theirs, cover.whole.vehicles().none(), choices);
        }
        return owner(draft, theirs).isPresent() ? breakout(theirs, choices) : theirs;
    }

    /** Takes the vehicles in which a branch is used now out of what is capped. */
    void uncap() {
        for (Ours.Cap cap : ours.wiring().ours().caps()) {
            Condition used = uncapped.get(cap.branch().text());
            Condition capped = ours.platform().vehicles().resolve(cap.when()).condition().and(cover.whole);
            if (used != null && !used.excludes(capped)) {
                TakenWords.narrow(cap.span(), cap.when(), capped.minus(used), cover, additions);
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

    private String added(Run run, List<Choice> choices) {
        String name = names.take(run.name().text());
        String from = run.from().map(Ref::text).orElseThrow();
        List<String> lines = new ArrayList<>();
        String words = "goes to " + place(run) + ", which no branch served";
        choices.add(new Choice(Choice.Kind.PARTIAL, name, words));
        lines.add("// Taken over: " + name + " " + words + ".");
        lines.add("branch " + name + " from " + (owner(draft, from).isPresent() ? breakout(from, choices) : from)
                + " to " + place(run));
        Condition capped = cover.whole.vehicles().anyOf(draft.wiring().ours().caps().stream().filter(cap -> cap.branch()
                .text().equals(run.name().text())).map(cap -> draft.platform().vehicles().resolve(cap.when())
                        .condition()).toList()).and(cover.whole);
        if (!capped.isNever()) {
            lines.add("// Not in every vehicle. Say where it is parked, and how long it may be for that.");
            lines.add("cap " + name + " when " + cover.words(capped));
        }
        List<Run> runs = ours.wiring().runs();
        additions.after(runs.getLast().span(), lines);
        return name;
    }

    private String breakout(String theirs, List<Choice> choices) {
        String known = breakouts.get(theirs);
        if (known == null) {
            known = twin(theirs).orElseGet(() -> addedBreakout(theirs, choices));
            breakouts.put(theirs, known);
        }
        return known;
    }

    /** The breakout from which we go to where the draft goes from its own; else the one of that name. */
    private Optional<String> twin(String theirs) {
        for (Run run : draft.wiring().runs(Run.Kind.BRANCH)) {
            if (run.from().filter(ref -> ref.text().equals(theirs)).isPresent()) {
                Optional<String> from = ours.wiring().runs(Run.Kind.BRANCH).stream().filter(each -> place(each).equals(
                        place(run))).flatMap(each -> each.from().stream()).map(Ref::text)
                        .filter(name -> owner(ours, name).isPresent()).findFirst();
                if (from.isPresent()) {
                    return from;
                }
            }
        }
        return owner(ours, theirs).map(run -> theirs);
    }

    private String addedBreakout(String theirs, List<Choice> choices) {
        Run run = owner(draft, theirs).orElseThrow();
        Optional<Run> on = run.kind() == Run.Kind.BRANCH ? ours.run(branch(run.name().text(), cover.whole.vehicles()
                .none(), choices)) : ours.run(run.name().text()).filter(each -> each.kind() == Run.Kind.TRUNK)
                        .or(() -> ours.wiring().runs(Run.Kind.TRUNK).stream().findFirst());
        if (on.isEmpty()) {
            choices.add(new Choice(Choice.Kind.LEFT, theirs, "no run of ours is there to take this breakout"));
            return theirs;
        }
        String name = names.take(theirs);
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
        choices.add(new Choice(Choice.Kind.PARTIAL, name, "a breakout that no branch left from"));
        String why = "// Taken over: nothing left the trunk here.";
        if (before.isPresent()) {
            additions.after(before.get().span(), List.of(why, line));
        } else if (!on.get().breakouts().isEmpty()) {
            additions.before(on.get().breakouts().getFirst().span(), List.of(why, line));
        } else {
            additions.into(on.get().span(), List.of(why, line));
        }
        return name;
    }
}
