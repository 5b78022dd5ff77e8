// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.Shown;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** What is known of the things of a platform: choices, places, zones, devices, grounds. */
final class PlatformHover {

    private PlatformHover() {
    }

    static String describe(Moment moment, Symbol symbol, List<Row> rows, Shown shown, Cancel cancel) {
        String owner = symbol.kind() == Symbol.Kind.PLATFORM ? symbol.name() : symbol.owner();
        PlatformView view = moment.project().platforms().get(owner);
        if (view == null) {
            return symbol.words();
        }
        Platform platform = view.platform();
        String name = symbol.name();
        String title = switch (symbol.kind()) {
            case PLATFORM -> platform(moment, view, rows);
            case CHOICE -> choice(view, name, rows);
            case AXIS -> axis(view, name, rows);
            case PLACE -> place(moment, view, name, rows, shown, cancel);
            case ZONE -> platform.zones().stream().filter(each -> each.name().text().equals(name)).findFirst()
                    .map(zone -> zone(view, zone, rows)).orElse("");
            case DEVICE -> {
                String words = HarnessHover.device(view.devices().get(name), rows);
                mates(moment, view, name, rows);
                FlowRows.device(moment, view, owner, name, rows);
                yield words;
            }
            case GROUND -> ground(view, name, rows);
            case POSITION -> position(moment, view, name, rows);
            case CONSTRAINT -> constraint(view, name, rows);
            case MODE -> platform.modes().stream().filter(each -> each.name().text().equals(name)).findFirst()
                    .map(Platform.Mode::title).orElse("");
            default -> "";
        };
        return symbol.words() + (title.isEmpty() ? "" : ", " + title);
    }

    private static String platform(Moment moment, PlatformView view, List<Row> rows) {
        Platform platform = view.platform();
        platform.supply().ifPresent(supply -> rows.add(new Row("supply", supply.voltage() + (supply.negativeGround()
                ? ", negative ground" : ", positive ground"))));
        platform.years().ifPresent(years -> rows.add(new Row("years", years.first() + " to " + years.last())));
        counted(view.vehicles().all(), "vehicles", rows);
        long drawings = moment.project().drawings().stream().filter(each -> each.platform() == view).count();
        long harnesses = moment.project().harnesses().stream().filter(each -> each.platform() == view).count();
        rows.add(new Row("", drawings + (drawings == 1 ? " drawing, " : " drawings, ") + harnesses
                + (harnesses == 1 ? " harness" : " harnesses") + " of ours"));
        return platform.title();
    }

    private static String choice(PlatformView view, String name, List<Row> rows) {
        Platform platform = view.platform();
        counted(view.vehicles().resolve(new Expression.Choice(name)).condition(), "vehicles", rows);
        for (Platform.Group group : platform.groups()) {
            for (Platform.Member member : group.members()) {
                if (member.name().text().equals(name)) {
                    rows.addFirst(new Row("", "one of " + group.name() + ": " + String.join(", ",
                            group.members().stream().map(each -> each.name().text()).toList())));
                    return member.title();
                }
            }
        }
        for (Platform.Option option : platform.options()) {
            if (option.name().text().equals(name)) {
                rows.addFirst(new Row("", option.upgrade() ? "upgrade, added later by an owner" : "factory option"));
                return option.title();
            }
        }
        for (Platform.Break each : platform.breaks()) {
            if (each.name().text().equals(name)) {
                rows.addFirst(new Row("", "change within model year " + each.year()));
                return each.title();
            }
        }
        return "";
    }

    private static String axis(PlatformView view, String name, List<Row> rows) {
        view.vehicles().choices().axis(name).map(Axis::members)
                .ifPresent(members -> rows.add(new Row("one of", String.join(", ", members))));
        return "";
    }

    private static void counted(Condition when, String label, List<Row> rows) {
        try {
            rows.add(new Row(label, when.tally()));
        } catch (TooManyCombinations e) {
            rows.add(new Row(label, "too many combinations to count"));
        }
    }

    private static String place(Moment moment, PlatformView view, String name, List<Row> rows, Shown shown,
            Cancel cancel) {
        Optional<Platform.Place> place = view.place(name);
        view.zoneOf(name).ifPresent(zone -> rows.add(new Row("zone", zone.name() + zone.ambient()
                .map(ambient -> ", " + ambient).orElse("") + (zone.wet() ? ", wet" : ", dry"))));
        place.ifPresent(each -> rows.add(new Row("vehicles", Vehicles.of(view.vehicles().resolve(each.when())
                .condition()))));
        List<String> reached = new ArrayList<>();
        for (WiringView wiring : moment.project().wirings().values()) {
            if (wiring.platform() == view) {
                wiring.wiring().runs().stream().filter(run -> run.to().map(Ref::text).filter(name::equals).isPresent())
                        .forEach(run -> reached.add(run.name() + " of " + wiring.name() + length(run)));
                wiring.wiring().datum().map(Ref::text).filter(name::equals)
                        .ifPresent(datum -> reached.add("datum of " + wiring.name()));
            }
        }
        rows.add(new Row("reached by", reached.isEmpty() ? "nothing" : String.join("; ", reached)));
        for (WiringView harness : moment.project().harnesses()) {
            if (harness.platform() == view) {
                rows.addAll(FitRows.of(moment, harness, name, "", shown, cancel));
            }
        }
        return place.map(Platform.Place::title).orElse("");
    }

    private static String length(Run run) {
        return run.length().flatMap(each -> each.value()).map(value -> " (" + value + ")").orElse("");
    }

    private static String zone(PlatformView view, Platform.Zone zone, List<Row> rows) {
        zone.ambient().ifPresent(ambient -> rows.add(new Row("ambient", ambient.toString())));
        rows.add(new Row("", zone.wet() ? "wet" : "dry"));
        List<String> places = view.platform().places().stream().filter(place -> place.zone().map(Ref::text)
                .filter(zone.name().text()::equals).isPresent()).map(place -> place.name().text()).toList();
        rows.add(new Row("places", places.isEmpty() ? "none" : String.join(", ", places)));
        return zone.title();
    }

    private static void mates(Moment moment, PlatformView view, String name, List<Row> rows) {
        List<String> mates = new ArrayList<>();
        for (WiringView wiring : moment.project().wirings().values()) {
            if (wiring.platform() == view) {
                wiring.connectors().values().stream().filter(connector -> connector.mates().stream()
                                .anyMatch(mate -> mate.value().device() && mate.value().element().equals(name)))
                        .forEach(connector -> mates.add(connector.name() + " of " + wiring.name()));
            }
        }
        if (!mates.isEmpty()) {
            rows.add(new Row("plugged into by", String.join(", ", mates)));
        }
    }

    private static String ground(PlatformView view, String name, List<Row> rows) {
        view.platform().straps().stream().filter(strap -> strap.from().text().equals(name)
                        || strap.to().text().equals(name))
                .forEach(strap -> rows.add(new Row("strap " + strap.name(), strap.from() + " to " + strap.to()
                        + strap.resistance().map(each -> ", " + each).orElse(""))));
        return view.platform().grounds().stream().filter(each -> each.name().text().equals(name)).findFirst()
                .map(each -> each.none() ? "conducts nothing" : each.title()).orElse("");
    }

    private static String position(Moment moment, PlatformView view, String name, List<Row> rows) {
        for (WiringView wiring : moment.project().wirings().values()) {
            if (wiring.platform() == view && wiring.wiring().position().map(Ref::text).filter(name::equals)
                    .isPresent()) {
                rows.add(new Row(wiring.wiring().isHarness() ? "harness" : "drawing", wiring.name() + ": "
                        + Vehicles.of(wiring.when())));
            }
        }
        return view.platform().positions().stream().filter(each -> each.name().text().equals(name)).findFirst()
                .map(Platform.Position::title).orElse("");
    }

    private static String constraint(PlatformView view, String name, List<Row> rows) {
        view.platform().constraints().stream().filter(each -> each.name().text().equals(name)).findFirst()
                .ifPresent(each -> rows.add(new Row("", each.needed().map(needed -> "require " + needed.words()
                        + " when " + each.never().words()).orElse("never " + each.never().words()))));
        counted(view.vehicles().all(), "vehicles that can exist", rows);
        return "";
    }
}
