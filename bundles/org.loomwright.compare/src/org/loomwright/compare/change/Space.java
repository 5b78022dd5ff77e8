// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.ChoiceNames;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Constraint;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Resolution;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.link.PlatformView;

/**
 * The vehicles on which conditions of both sides are compared: those of the new platform, those of the old one where it
 * is gone, none where neither side has a platform. A condition that does not resolve there is left as text.
 */
public final class Space {

    static final String OTHER_CHOICES = "the choices of the platform changed; told of the new platform";

    private static final Slot EXISTS = Slot.of(Property.EXISTS);

    private final Optional<Vehicles> vehicles;
    private final String caveat;
    private final Map<String, Optional<Condition>> known = new HashMap<>();

    Space(Optional<Vehicles> vehicles, String caveat) {
        this.vehicles = vehicles;
        this.caveat = caveat;
    }

    /**
     * The vehicles of a platform that one or both sides have.
     *
     * @param platform its name, the new one where it is renamed
     * @param names    which element is which: under another name a choice is the same
     */
    public static Space of(FactSheet old, FactSheet now, String platform, Matching names) {
        PlatformView before = old.platforms().get(before(platform, names));
        PlatformView after = now.platforms().get(platform);
        if (before == null || after == null) {
            return new Space(Stream.of(Optional.ofNullable(after), Optional.ofNullable(before))
                    .flatMap(Optional::stream).map(PlatformView::vehicles).findFirst(), "");
        }
        boolean same = isSame(choices(before, names), after.vehicles().choices());
        return new Space(Optional.of(after.vehicles()), same ? "" : OTHER_CHOICES);
    }

    /** The old name of a platform. */
    static String before(String platform, Matching names) {
        ItemId before = names.reversed().get(new ItemId(Sort.PLATFORM, "", platform));
        return before == null ? platform : before.name();
    }

    /** What an old platform leaves to choose, in the new names. */
    static Choices choices(PlatformView before, Matching names) {
        return ChoiceNames.follow(before.vehicles().choices(), before.name(), names.partners());
    }

    /** Whether two platforms leave the same to choose, wherever it is written and whatever titles it has. */
    public static boolean isSame(Choices one, Choices other) {
        return one.years().equals(other.years()) && one.axes().equals(other.axes())
                && breaks(one).equals(breaks(other)) && constraints(one).equals(constraints(other));
    }

    private static List<String> breaks(Choices choices) {
        return choices.breaks().stream().map(each -> each.year() + " " + each.name()).toList();
    }

    private static List<String> constraints(Choices choices) {
        return choices.constraints().stream().map(each -> switch (each) {
            case Constraint.Never never -> "never " + never.expression().words();
            case Constraint.Require require -> "require " + require.then().words() + " when " + require.when().words();
        }).sorted().toList();
    }

    String caveat() {
        return caveat;
    }

    /** The vehicles; empty where neither side has the platform. */
    public Optional<Vehicles> vehicles() {
        return vehicles;
    }

    /** The vehicles of a condition; empty where it means nothing here. */
    public Optional<Condition> resolve(Expression when) {
        return vehicles.flatMap(here -> known.computeIfAbsent(when.words(), any -> {
            try {
                Resolution resolution = here.resolve(when);
                return resolution.isGood() ? Optional.of(resolution.condition()) : Optional.empty();
            } catch (TooManyCombinations e) {
                return Optional.empty();
            }
        }));
    }

    /** The vehicles of all of the conditions; empty where one of them means nothing here. */
    public Optional<Condition> all(List<Expression> conditions) {
        Optional<Condition> all = vehicles.map(Vehicles::all);
        for (Expression each : conditions) {
            if (all.isPresent() && !(each instanceof Expression.Always)) {
                Condition so = all.get();
                all = resolve(each).map(so::and);
            }
        }
        return all;
    }

    /** The conditions of an element: that of its harness, those of what it is part of, and its own. */
    public static List<Expression> conditions(FactSheet side, Item item) {
        List<Expression> all = new ArrayList<>();
        FactSheet.Home home = side.homes().get(FactSheet.home(item.id()));
        if (home != null) {
            all.add(home.whole());
        }
        item.parent().flatMap(side::item).ifPresent(parent -> all.addAll(own(parent)));
        all.addAll(own(item));
        return all;
    }

    /** The conditions around an element, without its own. */
    static List<Expression> around(FactSheet side, Item item) {
        List<Expression> all = new ArrayList<>();
        FactSheet.Home home = side.homes().get(FactSheet.home(item.id()));
        if (home != null && !item.id().owner().isEmpty()) {
            all.add(home.whole());
        }
        item.parent().flatMap(side::item).ifPresent(parent -> all.addAll(own(parent)));
        return all;
    }

    private static List<Expression> own(Item item) {
        return item.in(EXISTS).stream().map(Stated::when).toList();
    }
}
