// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.ChoiceNames;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Span;

/**
 * Finds what is different between two matched sides. Pure; linear in the number of elements and, for each that changed,
 * in the work of its conditions.
 */
public final class ChangeFinder {

    private static final List<Slot> ENDS = List.of(Slot.of(Property.FROM), Slot.of(Property.TO));

    private static final Comparator<Change> ORDER = Comparator.comparing(Change::aspect)
            .thenComparing(Change::item).thenComparing(Change::kind);

    private final FactSheet old;
    private final FactSheet now;
    private final Matching matching;
    private final Map<ItemId, ItemId> names = new ConcurrentHashMap<>();
    private final Set<ItemId> renamed = new HashSet<>();
    private boolean ownerRenamed;
    private final FeltVehicles felt;
    private final Uses uses;
    private final List<Change> changes = new ArrayList<>();

    private ChangeFinder(FactSheet old, FactSheet now, Matching matching) {
        this.old = old;
        this.now = now;
        this.matching = matching;
        matching.partners().forEach(this::noteRenamed);
        this.felt = new FeltVehicles(old, now, matching);
        this.uses = new Uses(old, now, this::name);
    }

    /** The name of an old element on the new side; one that can be another than its own is worked out once. */
    private ItemId name(ItemId old) {
        return ownerRenamed || renamed.contains(old) ? names.computeIfAbsent(old, matching::name) : old;
    }

    private void noteRenamed(ItemId before, ItemId after) {
        if (!before.equals(after)) {
            renamed.add(before);
            renamed.add(after); // what had that name is gone, or is called otherwise
            ownerRenamed |= before.sort().isOwner();
        }
    }

    /** The old elements whose partner does not state the same in the same words, in order; found by all threads. */
    private List<ItemId> differing() {
        ItemId[] all = matching.partners().keySet().toArray(ItemId[]::new);
        boolean[] differs = new boolean[all.length];
        IntStream.range(0, all.length).parallel().forEach(i -> {
            Item before = old.items().get(all[i]);
            differs[i] = !isVerbatim(before, now.items().get(matching.partners().get(all[i])))
                    || before.isTouchedBy(this::name);
        });
        return IntStream.range(0, all.length).filter(i -> differs[i]).mapToObj(i -> all[i]).toList();
    }

    private boolean isVerbatim(Item before, Item after) {
        return before.id().equals(after.id()) ? matching.verbatim().contains(before.id()) : before.statesAs(after);
    }

    /** The changes, by aspect and element. */
    public static List<Change> find(FactSheet side, FactSheet now, Matching matching) {
        FactSheet old = ChoiceNames.follow(side, matching.partners());
        ChangeFinder finder = new ChangeFinder(old, now, matching);
        finder.differing().forEach(before ->
                finder.compare(old.items().get(before), now.items().get(matching.partners().get(before))));
        List<Change> all = new Swaps(finder.changes, now).joined();
        all.addAll(new Names(old, now, matching, finder.felt).changes());
        all.addAll(new Presence(old, now, matching, finder.felt, finder.uses).changes());
        return all.stream().sorted(ORDER).toList();
    }

    private void compare(Item before, Item after) {
        Item was = before.renamed(this::name);
        SortedSet<Slot> slots = new TreeSet<>(was.facts().keySet());
        slots.addAll(after.facts().keySet());
        if (isTurned(was, after)) {
            turned(before, was, after);
            slots.removeAll(ENDS);
        }
        for (Slot slot : slots) {
            List<Stated> then = was.in(slot);
            List<Stated> here = after.in(slot);
            if (!words(then).equals(words(here))) {
                if (slot.property().isDerived()) {
                    reordered(after, slot, then, here);
                } else {
                    changes.add(change(before, after, slot, then, here));
                }
            }
        }
    }

    /** Whether a wire is stated from its other end: a wire has no direction, so nothing else is said of it. */
    private static boolean isTurned(Item was, Item after) {
        return after.id().sort() == Sort.WIRE
                && words(was.in(ENDS.get(0))).equals(words(after.in(ENDS.get(1))))
                && words(was.in(ENDS.get(1))).equals(words(after.in(ENDS.get(0))))
                && !words(was.in(ENDS.get(0))).equals(words(after.in(ENDS.get(0))));
    }

    private void turned(Item before, Item was, Item after) {
        List<Delta> deltas = ENDS.stream().map(slot -> (Delta) new Delta.Restated(after.id(), slot, was.in(slot),
                after.in(slot))).toList();
        changes.add(new Change(Change.Kind.REWORDED, after.id(), Aspect.TEXT, Labels.of(after)
                + ": written from its other end", Felt.NONE, deltas, Optional.of(before.span()),
                Optional.of(after.span())));
    }

    private static List<String> words(List<Stated> stated) {
        return stated.stream().map(each -> each.value().key() + "\u0001" + each.words()).toList();
    }

    private Change change(Item before, Item after, Slot slot, List<Stated> was, List<Stated> is) {
        List<Delta> deltas = List.of(new Delta.Restated(after.id(), slot, was, is));
        Optional<Span> from = span(was, before);
        Optional<Span> to = span(is, after);
        if (felt.isSame(after, slot.property() == Property.EXISTS, was, is)) {
            return new Change(Change.Kind.REWORDED, after.id(), Aspect.TEXT,
                    Sentences.reworded(after, slot, was, is), Felt.NONE, deltas, from, to);
        }
        Aspect aspect = aspect(slot.property(), was, is);
        Felt vehicles = aspect == Aspect.TEXT ? Felt.NONE : vehicles(before, after, slot, was, is);
        String uses = after.id().sort() == Sort.PART && aspect != Aspect.TEXT ? "; " + this.uses.words(after.id()) : "";
        return new Change(Change.Kind.CHANGED, after.id(), aspect, Sentences.changed(after, slot, was, is) + uses,
                vehicles, deltas, from, to);
    }

    /** When only conditions differ, a change is about conditions. */
    private static Aspect aspect(Property property, List<Stated> was, List<Stated> is) {
        List<String> then = was.stream().map(each -> each.value().key()).distinct().sorted().toList();
        List<String> here = is.stream().map(each -> each.value().key()).distinct().sorted().toList();
        return then.equals(here) && property.aspect() != Aspect.TEXT ? Aspect.CONDITION : property.aspect();
    }

    private Felt vehicles(Item before, Item after, Slot slot, List<Stated> was, List<Stated> is) {
        return switch (slot.property()) {
            case YEARS -> years(after, was, is);
            case MEMBER -> felt.choice(now, after, new Expression.Choice(after.id().name()));
            case CONSTRAINT -> felt.constraints(after.id());
            default -> after.id().sort() == Sort.PART ? felt.users(uses.of(after.id()))
                    : felt.of(before, after, was, is);
        };
    }

    /** The years that only one of the platforms has. */
    private Felt years(Item platform, List<Stated> was, List<Stated> is) {
        if (was.size() == 1 && is.size() == 1) {
            int[] then = range(was.getFirst());
            int[] here = range(is.getFirst());
            List<Expression> gained = outside(here, then);
            if (!gained.isEmpty()) {
                return felt.choice(now, platform, Expression.anyOf(gained));
            }
            List<Expression> lost = outside(then, here);
            if (!lost.isEmpty()) {
                return felt.choice(old, platform, Expression.anyOf(lost));
            }
        }
        return Felt.written("all of " + platform.id().name(), "");
    }

    private static int[] range(Stated years) {
        String[] ends = years.value().shown().split(" \\.\\. ");
        return new int[] {Integer.parseInt(ends[0]), Integer.parseInt(ends[1])};
    }

    private static List<Expression> outside(int[] these, int[] those) {
        List<Expression> years = new ArrayList<>();
        for (int year = these[0]; year <= these[1] && years.size() < 200; year++) {
            if (year < those[0] || year > those[1]) {
                years.add(new Expression.Compare("year", Relation.EQ, Integer.toString(year)));
            }
        }
        return years;
    }

    /** Told when the breakouts that both sides have stand in another order. */
    private void reordered(Item after, Slot slot, List<Stated> was, List<Stated> is) {
        List<ItemId> then = new ArrayList<>(was.isEmpty() ? List.of() : was.getFirst().value().mentions());
        List<ItemId> here = new ArrayList<>(is.isEmpty() ? List.of() : is.getFirst().value().mentions());
        then.retainAll(here);
        here.retainAll(then);
        if (!then.equals(here)) {
            changes.add(new Change(Change.Kind.REORDERED, after.id(), Aspect.GEOMETRY,
                    Sentences.changed(after, slot, was, is), felt.of(now, after), List.of(), span(was, after),
                    span(is, after)));
        }
    }

    static Optional<Span> span(List<Stated> stated, Item item) {
        return Optional.of(stated.isEmpty() ? item.span() : stated.getFirst().span());
    }
}
