// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Device;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Wiring;

/** What a platform states. */
final class PlatformFacts {

    private static final Pattern PIECES = Pattern.compile("(?<=[ ()])|(?=[ ()])");

    private final Platform platform;
    private final String owner;
    private final Collection<Wiring> wirings;
    private final Consumer<ItemBuilder> sink;

    /**
     * @param platform the platform
     * @param wirings  all drawings and harnesses, for devices of theirs that a mode sets
     */
    PlatformFacts(Platform platform, Collection<Wiring> wirings, Consumer<ItemBuilder> sink) {
        this.platform = platform;
        this.wirings = wirings;
        this.owner = platform.name().text();
        this.sink = sink;
    }

    void read() {
        ItemBuilder own = new ItemBuilder(Sort.PLATFORM, "", owner, platform.span())
                .word(Property.TITLE, platform.title());
        platform.supply().ifPresent(each -> own.put(Property.SUPPLY, Value.quantity(each.voltage())
                .and(each.negativeGround() ? " negative ground" : " positive ground"), each.span()));
        platform.years().ifPresent(each -> own.put(Property.YEARS,
                Value.word(each.first() + " .. " + each.last()), each.span()));
        breaks(own);
        sink.accept(own);
        choices();
        surroundings();
        for (Device each : platform.devices()) {
            sink.accept(device(each, owner, owner));
        }
        for (Platform.Mode each : platform.modes()) {
            ItemBuilder mode = new ItemBuilder(Sort.MODE, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title()).ref(Property.PARENT, each.parent(), Sort.MODE, owner);
            each.settings().forEach(setting -> mode.put(new Slot(Property.MODE_SETTING,
                    device(setting.subject())), Value.word(setting.state()), new Expression.Always(),
                    setting.span()));
            sink.accept(mode);
        }
    }

    /** What a mode sets: a device of the platform, or one that only one drawing or harness has; the engine else. */
    private Value device(Ref subject) {
        String name = subject.text();
        if (platform.devices().stream().anyMatch(each -> each.name().text().equals(name))) {
            return Value.mention(Sort.DEVICE, owner, name);
        }
        List<String> owners = wirings.stream().filter(each -> each.platform().text().equals(owner)
                && each.devices().stream().anyMatch(device -> device.name().text().equals(name)))
                .map(each -> each.name().text()).toList();
        return owners.size() == 1 ? Value.mention(Sort.DEVICE, owners.getFirst(), name)
                : Value.word(subject.toString());
    }

    /** The order of breaks means something where there are several in one year. */
    private void breaks(ItemBuilder own) {
        Map<Integer, List<String>> byYear = new LinkedHashMap<>();
        for (Platform.Break each : platform.breaks()) {
            byYear.computeIfAbsent(each.year(), any -> new ArrayList<>()).add(each.name().text());
            sink.accept(new ItemBuilder(Sort.BREAK, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title())
                    .word(Property.BREAK_YEAR, Integer.toString(each.year())));
        }
        byYear.forEach((year, names) -> {
            if (names.size() > 1) {
                own.put(new Slot(Property.BREAK_ORDER, Value.word(Integer.toString(year))),
                        listed(names), new Expression.Always(), platform.span());
            }
        });
    }

    private Value listed(List<String> breaks) {
        Value all = Value.NONE;
        for (String each : breaks) {
            all = (all.equals(Value.NONE) ? all : all.and(", ")).and(Value.mention(Sort.BREAK, owner, each));
        }
        return all;
    }

    private void choices() {
        for (Platform.Group each : platform.groups()) {
            ItemBuilder group = new ItemBuilder(Sort.GROUP, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title());
            for (Platform.Member member : each.members()) {
                String name = member.name().text();
                group.neighbour(Value.mention(Sort.MEMBER, owner, name));
                sink.accept(new ItemBuilder(Sort.MEMBER, owner, name, each.span())
                        .put(Property.MEMBER, Value.mention(Sort.GROUP, owner, each.name().text()), each.span())
                        .word(Property.TITLE, member.title()));
            }
            sink.accept(group);
        }
        for (Platform.Option each : platform.options()) {
            sink.accept(new ItemBuilder(Sort.OPTION, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title())
                    .word(Property.CHOICE_KIND, each.upgrade() ? "upgrade" : "option"));
        }
        for (Platform.Constraint each : platform.constraints()) {
            String words = each.needed().map(needed -> "require " + needed.words() + " when " + each.never().words())
                    .orElseGet(() -> "never " + each.never().words());
            String name = each.name().text().isEmpty() ? words : each.name().text();
            sink.accept(new ItemBuilder(Sort.CONSTRAINT, owner, name, each.span())
                    .put(Property.CONSTRAINT, choices(words), each.span()));
        }
    }

    /** The words of a condition, in which the names of options, groups, their members and breaks are names. */
    private Value choices(String words) {
        Map<String, Sort> sorts = new HashMap<>();
        platform.groups().forEach(each -> each.members()
                .forEach(member -> sorts.put(member.name().text(), Sort.MEMBER)));
        platform.options().forEach(each -> sorts.put(each.name().text(), Sort.OPTION));
        platform.groups().forEach(each -> sorts.put(each.name().text(), Sort.GROUP));
        platform.breaks().forEach(each -> sorts.put(each.name().text(), Sort.BREAK));
        List<Value.Token> tokens = new ArrayList<>();
        for (String piece : PIECES.split(words)) {
            Sort sort = sorts.get(piece);
            tokens.add(sort == null ? new Value.Word(piece, piece)
                    : new Value.Mention(new ItemId(sort, owner, piece), false));
        }
        return new Value(tokens);
    }

    private void surroundings() {
        for (Platform.Zone each : platform.zones()) {
            ItemBuilder zone = new ItemBuilder(Sort.ZONE, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title()).word(Property.WET, each.wet() ? "wet" : "dry");
            each.ambient().ifPresent(ambient -> zone.put(Property.AMBIENT, Value.quantity(ambient), each.span()));
            sink.accept(zone);
        }
        for (Platform.Place each : platform.places()) {
            sink.accept(new ItemBuilder(Sort.PLACE, owner, each.name().text(), each.span()).exists(each.when())
                    .word(Property.TITLE, each.title()).ref(Property.ZONE, each.zone(), Sort.ZONE, owner));
        }
        for (Platform.Position each : platform.positions()) {
            sink.accept(new ItemBuilder(Sort.POSITION, owner, each.name().text(), each.span()).exists(each.when())
                    .word(Property.TITLE, each.title()));
        }
        for (Platform.GroundNode each : platform.grounds()) {
            sink.accept(new ItemBuilder(Sort.GROUND, owner, each.name().text(), each.span())
                    .word(Property.TITLE, each.title()).word(Property.NO_RETURN, each.none() ? "none" : "returns"));
        }
        for (Platform.Strap each : platform.straps()) {
            ItemBuilder strap = new ItemBuilder(Sort.STRAP, owner, each.name().text(), each.span())
                    .exists(each.when()).put(Property.STRAP_END, Value.mention(Sort.GROUND, owner, each.from().text())
                            .and(" and ").and(Value.mention(Sort.GROUND, owner, each.to().text())), each.span());
            each.resistance().ifPresent(ohms -> strap.put(Property.RESISTANCE, Value.quantity(ohms), each.span()));
            sink.accept(strap);
        }
    }

    /** A device of a platform, drawing or harness. */
    static ItemBuilder device(Device device, String owner, String platform) {
        ItemBuilder item = new ItemBuilder(Sort.DEVICE, owner, device.name().text(), device.span())
                .exists(device.when()).word(Property.TITLE, device.title()).parts(Property.PART, device.part())
                .ref(Property.PLACE, device.place(), Sort.PLACE, platform)
                .ref(Property.GROUND, device.grounded(), Sort.GROUND, platform);
        return device.returns() ? item.word(Property.RETURNS, "yes") : item;
    }
}
