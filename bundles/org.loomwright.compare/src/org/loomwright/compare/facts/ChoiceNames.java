// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Constraint;
import org.loomwright.condition.Expression;

/** Finds the options, upgrades, groups, members and breaks that conditions name, and follows those that are renamed. */
public final class ChoiceNames {

    private static final Set<Sort> CHOICES = EnumSet.of(Sort.GROUP, Sort.MEMBER, Sort.OPTION,
            Sort.BREAK);

    private final FactSheet side;
    private final Map<String, Map<String, String>> byPlatform;

    private ChoiceNames(FactSheet side, Map<String, Map<String, String>> byPlatform) {
        this.side = side;
        this.byPlatform = byPlatform;
    }

    /**
     * A side with the new names of choices in its conditions; the side itself where no choice is renamed. Elements keep
     * their own names. Linear in the facts.
     *
     * @param side  the side
     * @param names new elements by old ones
     */
    public static FactSheet follow(FactSheet side, Map<ItemId, ItemId> names) {
        Map<String, Map<String, String>> byPlatform = byPlatform(names);
        return byPlatform.isEmpty() ? side : new ChoiceNames(side, byPlatform).followed();
    }

    /** New names of choices by old ones, by the old name of their platform; only those that are renamed. */
    private static Map<String, Map<String, String>> byPlatform(Map<ItemId, ItemId> names) {
        Map<String, Map<String, String>> byPlatform = new HashMap<>();
        names.forEach((before, after) -> {
            if (CHOICES.contains(before.sort()) && !before.name().equals(after.name())) {
                byPlatform.computeIfAbsent(before.owner(), any -> new HashMap<>()).put(before.name(), after.name());
            }
        });
        return byPlatform;
    }

    /**
     * What there is to choose about a platform, with the new names of choices. Linear in it and its constraints.
     *
     * @param platform the name of the platform on the old side
     * @param names    new elements by old ones
     */
    public static Choices follow(Choices choices, String platform, Map<ItemId, ItemId> names) {
        Map<String, String> renamed = byPlatform(names).getOrDefault(platform, Map.of());
        if (renamed.isEmpty()) {
            return choices;
        }
        Choices.Builder followed = Choices.builder();
        choices.years().ifPresent(years -> followed.years(years.first(), years.last()));
        choices.breaks().forEach(each -> followed.yearBreak(name(each.name(), renamed), each.year(), each.title()));
        for (Axis axis : choices.axes()) {
            String name = name(axis.name(), renamed);
            switch (axis.kind()) {
                case YEAR -> { } // made of years and breaks
                case GROUP -> followed.group(name, axis.members().stream().map(each -> name(each, renamed)).toList());
                case OPTION -> followed.option(name);
                case UPGRADE -> followed.upgrade(name);
            }
        }
        for (Constraint constraint : choices.constraints()) {
            followed.constraint(switch (constraint) {
                case Constraint.Never never -> new Constraint.Never(named(never.expression(), renamed));
                case Constraint.Require require -> new Constraint.Require(named(require.then(), renamed),
                        named(require.when(), renamed));
            });
        }
        return followed.build();
    }

    /** The options, upgrades, groups, members and breaks that a condition of an element names. */
    public static Set<ItemId> named(FactSheet side, Item item, Expression when) {
        Set<ItemId> named = new HashSet<>();
        if (!(when instanceof Expression.Always)) {
            String platform = new ChoiceNames(side, Map.of()).platform(item);
            words(when).forEach(name -> CHOICES.stream().map(sort -> new ItemId(sort, platform, name))
                    .filter(side.items()::containsKey).forEach(named::add));
        }
        return named;
    }

    private static Stream<String> words(Expression each) {
        return switch (each) {
            case Expression.Always always -> Stream.of();
            case Expression.Choice choice -> Stream.of(choice.name());
            case Expression.Compare compare -> Stream.of(compare.group(), compare.member());
            case Expression.Range range -> Stream.of(range.group(), range.from(), range.to());
            case Expression.Not not -> words(not.operand());
            case Expression.And and -> and.operands().stream().flatMap(ChoiceNames::words);
            case Expression.Or or -> or.operands().stream().flatMap(ChoiceNames::words);
        };
    }

    private FactSheet followed() {
        Map<String, FactSheet.Home> homes = new HashMap<>();
        side.homes().forEach((name, home) -> homes.put(name, new FactSheet.Home(home.platform(),
                named(home.whole(), byPlatform.getOrDefault(home.platform(), Map.of())))));
        List<Item> items = new ArrayList<>(side.items().size());
        side.items().values().forEach(item -> items.add(named(item, byPlatform.getOrDefault(platform(item),
                Map.of()))));
        return new FactSheet(FactSheet.inOrder(items), homes, side.platforms());
    }

    /** The platform of which an element's conditions speak; that of a part where there is only one. */
    private String platform(Item item) {
        FactSheet.Home home = side.homes().get(FactSheet.home(item.id()));
        boolean one = home == null && side.platforms().size() == 1;
        return one ? side.platforms().keySet().iterator().next() : home == null ? "" : home.platform();
    }

    private static Item named(Item item, Map<String, String> names) {
        if (names.isEmpty() || item.facts().values().stream().flatMap(List::stream).allMatch(Stated::isAlways)) {
            return item;
        }
        TreeMap<Slot, List<Stated>> facts = new TreeMap<>();
        item.facts().forEach((slot, stated) -> facts.put(slot, stated.stream()
                .map(each -> new Stated(each.value(), named(each.when(), names), each.span())).sorted().toList()));
        return new Item(item.id(), facts, item.neighbours(), item.span());
    }

    private static Expression named(Expression each, Map<String, String> names) {
        return switch (each) {
            case Expression.Always always -> always;
            case Expression.Choice choice -> new Expression.Choice(name(choice.name(), names), choice.offset(),
                    choice.length());
            case Expression.Compare compare -> new Expression.Compare(name(compare.group(), names),
                    compare.relation(), name(compare.member(), names), compare.offset(), compare.length());
            case Expression.Range range -> new Expression.Range(name(range.group(), names),
                    name(range.from(), names), name(range.to(), names), range.offset(), range.length());
            case Expression.Not not -> new Expression.Not(named(not.operand(), names), not.offset(), not.length());
            case Expression.And and -> new Expression.And(named(and.operands(), names), and.offset(), and.length());
            case Expression.Or or -> new Expression.Or(named(or.operands(), names), or.offset(), or.length());
        };
    }

    private static List<Expression> named(List<Expression> operands, Map<String, String> names) {
        return operands.stream().map(each -> named(each, names)).toList();
    }

    private static String name(String name, Map<String, String> names) {
        return names.getOrDefault(name, name);
    }
}
