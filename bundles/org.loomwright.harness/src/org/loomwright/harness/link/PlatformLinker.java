// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Device;
import org.loomwright.harness.Name;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;

/** Gives a platform its vehicles and its devices their parts. */
final class PlatformLinker {

    private final Problems problems;
    private final Parts parts;
    private final int mostNodes;
    private final List<Practice> practices;

    PlatformLinker(Problems problems, Parts parts, List<Practice> practices, int mostNodes) {
        this.mostNodes = mostNodes;
        this.practices = practices;
        this.problems = problems;
        this.parts = parts;
    }

    PlatformView link(Platform platform) {
        Choices choices = choices(platform);
        Vehicles vehicles = Vehicles.of(choices, mostNodes);
        String file = platform.span().file();
        for (var problem : vehicles.problems()) {
            problems.condition(file, problem, platform.name().span());
        }
        if (vehicles.all().isNever()) {
            problems.add("platform-has-no-vehicle", platform.name().span(),
                    "no vehicle of platform \"" + platform.name() + "\" can exist",
                    "its constraints exclude each other: take back one of its never or require lines");
        }
        Facts facts = new Facts(problems, vehicles, parts);
        names("places", platform.places().stream().map(Platform.Place::name).toList());
        names("zones", platform.zones().stream().map(Platform.Zone::name).toList());
        names("positions", platform.positions().stream().map(Platform.Position::name).toList());
        names("modes", platform.modes().stream().map(Platform.Mode::name).toList());
        modes(platform);
        List<String> zones = platform.zones().stream().map(zone -> zone.name().text()).toList();
        for (Platform.Place place : platform.places()) {
            facts.condition(place.when(), place.span(), vehicles.all());
            place.zone().filter(zone -> !zones.contains(zone.text()))
                    .ifPresent(zone -> problems.unknown("zone", zone, zones));
        }
        List<String> grounds = platform.grounds().stream().map(ground -> ground.name().text()).toList();
        for (Platform.Strap strap : platform.straps()) {
            for (Ref end : List.of(strap.from(), strap.to())) {
                if (!end.text().isEmpty() && !grounds.contains(end.text())) {
                    problems.unknown("ground", end, grounds);
                }
            }
        }
        Map<String, DeviceView> devices = new LinkedHashMap<>();
        for (Device device : platform.devices()) {
            DeviceView view = facts.device(platform.name().text(), device, vehicles.all());
            DeviceView before = devices.putIfAbsent(view.name(), view);
            if (before != null) {
                problems.twice("devices", device.name(), before.device().name());
            }
            facts.known("place", device.place(), platform.places().stream().map(place -> place.name().text()).toList());
            facts.known("ground", device.grounded(), grounds);
        }
        return new PlatformView(platform, vehicles, Collections.unmodifiableMap(devices),
                PracticeView.of(practices, platform.name().text()));
    }

    /** Reports each mode that extends itself in the end, once a ring: at the mode that comes first. */
    private void modes(Platform platform) {
        Map<String, Platform.Mode> modes = new LinkedHashMap<>();
        platform.modes().forEach(each -> modes.putIfAbsent(each.name().text(), each));
        Set<String> done = new HashSet<>();
        for (Platform.Mode mode : modes.values()) {
            Set<String> way = new LinkedHashSet<>();
            Platform.Mode at = mode;
            while (at != null && !done.contains(at.name().text()) && way.add(at.name().text())) {
                at = at.parent().map(Ref::text).map(modes::get).orElse(null);
            }
            if (at == mode && way.contains(mode.name().text())) {
                problems.add("mode-circle", mode.name().span(), "mode \"" + mode.name()
                        + "\" extends itself in the end" + (way.size() > 1 ? ", by way of "
                        + String.join(", ", way.stream().skip(1).limit(5).toList()) : ""),
                        "let one of the modes stand alone");
                done.addAll(way);
            }
        }
    }

    private void names(String sort, List<Name> names) {
        Map<String, Name> seen = new LinkedHashMap<>();
        for (Name name : names) {
            Name before = name.text().isEmpty() ? null : seen.putIfAbsent(name.text(), name);
            if (before != null) {
                problems.twice(sort, name, before);
            }
        }
    }

    private static Choices choices(Platform platform) {
        Choices.Builder builder = Choices.builder();
        platform.years().ifPresent(years -> builder.years(years.first(), years.last()));
        platform.breaks().forEach(each -> builder.yearBreak(each.name().text(), each.year(), each.title()));
        platform.groups().forEach(group -> builder.group(group.name().text(),
                group.members().stream().map(member -> member.name().text()).toList()));
        for (Platform.Option option : platform.options()) {
            if (option.upgrade()) {
                builder.upgrade(option.name().text());
            } else {
                builder.option(option.name().text());
            }
        }
        for (Platform.Constraint constraint : platform.constraints()) {
            constraint.needed().ifPresentOrElse(needed -> builder.require(needed, constraint.never()),
                    () -> builder.never(constraint.never()));
        }
        return builder.build();
    }

    /** The view of a platform that does not exist: one vehicle without choices. */
    static PlatformView absent(Ref platform) {
        Platform empty = new Platform(new Name(platform.text(), platform.span()), "", Optional.empty(),
                Optional.empty(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
                List.of(), List.of(), List.of(), List.of(), platform.span());
        return new PlatformView(empty, Vehicles.of(Choices.builder().build()), Map.of(), PracticeView.NONE);
    }
}
