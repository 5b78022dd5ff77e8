// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Constraint;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.link.PlatformView;

/** Works out which vehicles feel a change. */
final class FeltVehicles {

    private final FactSheet old;
    private final FactSheet now;
    private final Matching names;
    private final Map<String, Space> spaces = new HashMap<>();

    FeltVehicles(FactSheet old, FactSheet now, Matching names) {
        this.old = old;
        this.now = now;
        this.names = names;
    }

    /** The vehicles of an element that is on one side only. */
    Felt of(FactSheet side, Item item) {
        return felt(item, side.homes().get(FactSheet.home(item.id())), Space.conditions(side, item), List.of());
    }

    /** The vehicles in which an element has another value than it had. */
    Felt of(Item before, Item after, List<Stated> was, List<Stated> is) {
        Space space = space(after);
        Optional<Condition> changed = difference(before, after, was, is, space);
        FactSheet.Home home = now.homes().get(FactSheet.home(after.id()));
        if (changed.isPresent()) {
            return Felt.of(changed.get(), whole(home, space), FactSheet.home(after.id()), space.caveat());
        }
        return felt(after, home, Space.conditions(now, after),
                Stream.concat(was.stream(), is.stream()).map(Stated::when).toList());
    }

    /** Whether both state the same of the same vehicles; of the element's own condition, when that is in question. */
    boolean isSame(Item after, boolean own, List<Stated> was, List<Stated> is) {
        List<String> oldKeys = was.stream().map(each -> each.value().key()).distinct().sorted().toList();
        if (!oldKeys.equals(is.stream().map(each -> each.value().key()).distinct().sorted().toList())) {
            return false;
        }
        if (conditions(was).equals(conditions(is))) {
            return true;
        }
        Space space = space(after);
        List<Expression> around = own ? Space.around(now, after) : Space.conditions(now, after);
        return oldKeys.stream().allMatch(key -> {
            Optional<Condition> then = of(around, was, key, space);
            return then.isPresent() && then.equals(of(around, is, key, space));
        });
    }

    private static List<String> conditions(List<Stated> stated) {
        return stated.stream().map(each -> each.value().key() + " " + each.when().words()).sorted().toList();
    }

    private Optional<Condition> difference(Item before, Item after, List<Stated> was, List<Stated> is, Space space) {
        TreeSet<String> keys = new TreeSet<>();
        Stream.concat(was.stream(), is.stream()).forEach(each -> keys.add(each.value().key()));
        Optional<Condition> any = space.vehicles().map(Vehicles::none);
        for (String key : keys) {
            Optional<Condition> then = of(Space.conditions(old, before), was, key, space);
            Optional<Condition> here = of(Space.conditions(now, after), is, key, space);
            if (any.isEmpty() || then.isEmpty() || here.isEmpty()) {
                return Optional.empty();
            }
            any = Optional.of(any.get().or(then.get().minus(here.get())).or(here.get().minus(then.get())));
        }
        return any;
    }

    /** The vehicles in which one value holds. */
    private static Optional<Condition> of(List<Expression> around, List<Stated> stated, String key, Space space) {
        Optional<Condition> any = space.vehicles().map(Vehicles::none);
        for (Stated each : stated) {
            if (each.value().key().equals(key) && any.isPresent()) {
                List<Expression> all = new ArrayList<>(around);
                all.add(each.when());
                Condition so = any.get();
                any = space.all(all).map(so::or);
            }
        }
        return any;
    }

    private Felt felt(Item item, FactSheet.Home home, List<Expression> conditions, List<Expression> more) {
        Space space = space(item);
        Optional<Condition> condition = more.isEmpty() ? space.all(conditions) : Optional.empty();
        if (condition.isPresent()) {
            return Felt.of(condition.get(), whole(home, space), FactSheet.home(item.id()), space.caveat());
        }
        List<String> words = Stream.concat(more.stream(), more.isEmpty() ? conditions.stream() : Stream.of())
                .filter(each -> !(each instanceof Expression.Always)).map(Expression::words).distinct().toList();
        return Felt.written(words.isEmpty() ? "all of " + FactSheet.home(item.id())
                : "as written: " + String.join("; ", words), space.caveat());
    }

    private static Optional<Condition> whole(FactSheet.Home home, Space space) {
        return Optional.ofNullable(home).flatMap(each -> space.resolve(each.whole()));
    }

    /** The vehicles on which conditions around an element are compared. */
    Space space(Item item) {
        String name = FactSheet.home(item.id());
        FactSheet.Home home = now.homes().containsKey(name) ? now.homes().get(name) : old.homes().get(name);
        return space(home == null ? "" : home.platform());
    }

    private Space space(String platform) {
        return spaces.computeIfAbsent(platform, name -> Space.of(old, now, name, names));
    }

    /** The vehicles that become possible or impossible when the constraints of a platform change. */
    Felt constraints(ItemId constraint) {
        PlatformView before = old.platforms().get(Space.before(constraint.owner(), names));
        PlatformView after = now.platforms().get(constraint.owner());
        if (before == null || after == null) {
            return Felt.written("all of " + constraint.owner(), "");
        }
        Choices then = Space.choices(before, names);
        Choices here = after.vehicles().choices();
        if (!Objects.equals(then.axes(), here.axes())) {
            return Felt.written("vehicles that can or cannot exist any more", Space.OTHER_CHOICES);
        }
        Vehicles free = Vehicles.of(new Choices(here.years(), here.breaks(), here.axes(), List.of(), List.of()));
        Condition was = allowed(free, then);
        Condition is = allowed(free, here);
        Felt felt = Felt.of(was.minus(is).or(is.minus(was)), Optional.empty(), "", "");
        return new Felt(felt.words(), felt.tally(), felt.condition(),
                "vehicles that can exist on one side only, counted without constraints");
    }

    private static Condition allowed(Vehicles free, Choices choices) {
        Condition allowed = free.all();
        for (var each : choices.constraints()) {
            allowed = switch (each) {
                case Constraint.Never never ->
                        allowed.minus(free.resolve(never.expression()).condition());
                case Constraint.Require require ->
                        allowed.minus(free.resolve(require.when()).condition()
                                .minus(free.resolve(require.then()).condition()));
            };
        }
        return allowed;
    }

    /** The vehicles with a choice that one side does not have. */
    Felt choice(FactSheet side, Item item, Expression choice) {
        PlatformView platform = side.platforms().get(FactSheet.home(item.id()));
        String caveat = side == now ? "on the new platform" : "on the old platform";
        return platform == null || !platform.vehicles().resolve(choice).isGood()
                ? Felt.written("all of " + FactSheet.home(item.id()), "")
                : Felt.of(platform.vehicles().resolve(choice).condition(), Optional.empty(), "", caveat);
    }

    /** The vehicles of everything that uses a part, over all platforms. */
    Felt users(List<Uses.Use> uses) {
        List<Condition> conditions = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (Uses.Use use : uses) {
            List<Expression> all = new ArrayList<>(Space.conditions(use.old() ? old : now, use.item()));
            all.add(use.when());
            Optional<Condition> condition = space(use.item()).all(all);
            if (condition.isEmpty()) {
                words.add("as written: " + Expression.allOf(all.stream()
                        .filter(each -> !(each instanceof Expression.Always)).toList()).words());
            } else if (conditions.isEmpty() || conditions.getFirst().vehicles() == condition.get().vehicles()) {
                conditions.add(condition.get());
            } else {
                words.add(condition.get().words() + " of " + FactSheet.home(use.item().id()));
            }
        }
        if (conditions.isEmpty()) {
            return words.isEmpty() ? Felt.NONE
                    : Felt.written(String.join("; ", words.stream().distinct().toList()), "");
        }
        Felt felt = Felt.of(conditions.getFirst().vehicles().anyOf(conditions), Optional.empty(), "", "");
        return words.isEmpty() ? felt : new Felt(felt.words() + "; " + String.join("; ", words.stream().distinct()
                .toList()), felt.tally(), felt.condition(), "");
    }

    /** The vehicles that feel at least one of several changes around one home. */
    static Felt either(List<Felt> several, String home) {
        Felt first = several.getFirst();
        List<Condition> conditions = several.stream().flatMap(each -> each.condition().stream()).distinct().toList();
        boolean one = conditions.size() <= 1 || conditions.stream()
                .anyMatch(each -> each.vehicles() != conditions.getFirst().vehicles());
        if (one || several.stream().anyMatch(each -> each.condition().isEmpty())) {
            return first;
        }
        return Felt.of(conditions.getFirst().vehicles().anyOf(conditions), Optional.empty(), home, first.caveat());
    }
}
