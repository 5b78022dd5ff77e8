// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Device;
import org.loomwright.harness.Name;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Platform.Break;
import org.loomwright.harness.Platform.Constraint;
import org.loomwright.harness.Platform.Group;
import org.loomwright.harness.Platform.Member;
import org.loomwright.harness.Platform.Mode;
import org.loomwright.harness.Platform.Position;
import org.loomwright.harness.Platform.Setting;
import org.loomwright.harness.Platform.Strap;
import org.loomwright.harness.Platform.Supply;
import org.loomwright.harness.Platform.Years;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.model.loom.GroundNode;
import org.loomwright.model.loom.ModeSetting;
import org.loomwright.model.loom.Never;
import org.loomwright.model.loom.Option;
import org.loomwright.model.loom.Place;
import org.loomwright.model.loom.PlatformFact;
import org.loomwright.model.loom.Polarity;
import org.loomwright.model.loom.Requirement;
import org.loomwright.model.loom.YearBreak;
import org.loomwright.model.loom.Zone;

/** Builds one platform. */
final class PlatformBuilder extends Builder {
    /** From the first motor car to beyond every source: common practice. */
    private static final int FIRST_YEAR = 1886;
    private static final int LAST_YEAR = 2200;

    private Optional<Supply> supply = Optional.empty();
    private Optional<Years> years = Optional.empty();
    private final List<Break> breaks = new ArrayList<>();
    private final List<Group> groups = new ArrayList<>();
    private final List<Platform.Option> options = new ArrayList<>();
    private final List<Constraint> constraints = new ArrayList<>();
    private final List<Platform.Zone> zones = new ArrayList<>();
    private final List<Platform.Place> places = new ArrayList<>();
    private final List<Position> positions = new ArrayList<>();
    private final List<Platform.GroundNode> grounds = new ArrayList<>();
    private final List<Strap> straps = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Mode> modes = new ArrayList<>();

    PlatformBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
    }

    Platform build(org.loomwright.model.loom.Platform source) {
        source.getFacts().forEach(this::add);
        Written written = of(source);
        return new Platform(written.name("name"), text(source.getTitle()), supply, years, List.copyOf(breaks),
                List.copyOf(groups), List.copyOf(options), List.copyOf(constraints), List.copyOf(zones),
                List.copyOf(places), List.copyOf(positions), List.copyOf(grounds), List.copyOf(straps),
                List.copyOf(devices), List.copyOf(modes), written.span());
    }

    private void add(PlatformFact fact) {
        Written written = of(fact);
        Name name = written.name("name");
        Span span = written.span();
        switch (fact) {
            case org.loomwright.model.loom.Supply each -> addSupply(each, written);
            case org.loomwright.model.loom.Years each -> addYears(each, written);
            case YearBreak each -> lengths.number(each.getYear(), FIRST_YEAR, LAST_YEAR, written.span("year"), "a year")
                    .ifPresent(year -> breaks.add(new Break(name, year, text(each.getTitle()), span)));
            case org.loomwright.model.loom.Group each -> groups.add(new Group(name, text(each.getTitle()),
                    each.getMembers().stream().map(this::member).toList(), span));
            case Option each -> options.add(new Platform.Option(name, text(each.getTitle()), each.isUpgrade(), span));
            case Never each -> {
                if (each.getNever() != null) {
                    constraints.add(new Constraint(name, when(each.getNever()), Optional.empty(), span));
                }
            }
            case Requirement each -> {
                if (each.getNeeded() != null && each.getWhen() != null) {
                    constraints.add(new Constraint(name, when(each.getWhen()), Optional.of(when(each.getNeeded())),
                            span));
                }
            }
            case Zone each -> zones.add(new Platform.Zone(name, text(each.getTitle()),
                    quantities.read(each.getAmbient(), Kind.TEMPERATURE), each.isWet(), span));
            case Place each -> places.add(new Platform.Place(name, text(each.getTitle()), written.ref("zone"),
                    when(each.getWhen()), span));
            case org.loomwright.model.loom.Position each -> positions.add(new Position(name, text(each.getTitle()),
                    when(each.getWhen()), span));
            case GroundNode each -> grounds.add(new Platform.GroundNode(name, text(each.getTitle()), each.isIsolated(),
                    span));
            case org.loomwright.model.loom.Strap each -> straps.add(new Strap(name, written.needed("from"),
                    written.needed("to"), quantities.read(each.getResistance(), Kind.RESISTANCE), when(each.getWhen()),
                    span));
            case org.loomwright.model.loom.Device each -> devices.add(device(each));
            case org.loomwright.model.loom.Mode each -> modes.add(mode(each, written));
            default -> { }
        }
    }

    private Member member(org.loomwright.model.loom.Member source) {
        return new Member(of(source).name("name"), text(source.getTitle()));
    }

    private void addSupply(org.loomwright.model.loom.Supply source, Written written) {
        if (supply.isPresent()) {
            file.again(written.span(), "supply");
        } else {
            supply = quantities.read(source.getVoltage(), Kind.VOLTAGE).map(voltage -> new Supply(voltage,
                    source.getPolarity() == Polarity.NEGATIVE, written.span()));
        }
    }

    private void addYears(org.loomwright.model.loom.Years source, Written written) {
        if (years.isPresent()) {
            file.again(written.span(), "row of model years");
            return;
        }
        Optional<Integer> first = lengths.number(source.getFirst(), FIRST_YEAR, LAST_YEAR, written.span("first"),
                "a year");
        Optional<Integer> last = lengths.number(source.getLast(), FIRST_YEAR, LAST_YEAR, written.span("last"),
                "a year");
        if (first.isPresent() && last.isPresent() && first.get() > last.get()) {
            file.problems().add("range-reversed", written.span(), "the last model year, " + last.get()
                    + ", comes before the first, " + first.get(), "write the earlier year first");
        } else if (first.isPresent() && last.isPresent()) {
            years = Optional.of(new Years(first.get(), last.get(), written.span()));
        }
    }

    private Mode mode(org.loomwright.model.loom.Mode source, Written written) {
        List<Setting> settings = new ArrayList<>();
        source.getFacts().forEach(fact -> {
            if (fact instanceof ModeSetting setting) {
                Written line = of(setting);
                Name subject = line.name("subject");
                settings.add(new Setting(Ref.of(subject.text(), subject.span()), text(setting.getState()),
                        line.span()));
            }
        });
        return new Mode(written.name("name"), text(source.getTitle()), written.ref("parent"), List.copyOf(settings),
                written.span());
    }
}
