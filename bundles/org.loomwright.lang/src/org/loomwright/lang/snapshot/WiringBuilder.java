// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Connector.CavityFact;
import org.loomwright.harness.Connector.CavityKind;
import org.loomwright.harness.Device;
import org.loomwright.harness.Location;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ours.Cap;
import org.loomwright.harness.Ours.Objective;
import org.loomwright.harness.Ours.Setting;
import org.loomwright.harness.Ours.SettingKind;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.Wiring.Defaults;
import org.loomwright.harness.Wiring.Placed;
import org.loomwright.harness.Wiring.Sheet;
import org.loomwright.harness.Wiring.Stud;
import org.loomwright.model.loom.Branch;
import org.loomwright.model.loom.CableFact;
import org.loomwright.model.loom.Covers;
import org.loomwright.model.loom.Datum;
import org.loomwright.model.loom.DefaultTolerance;
import org.loomwright.model.loom.ForFact;
import org.loomwright.model.loom.IsFact;
import org.loomwright.model.loom.LimitSetting;
import org.loomwright.model.loom.MadeKind;
import org.loomwright.model.loom.MadeSetting;
import org.loomwright.model.loom.MatesFact;
import org.loomwright.model.loom.ObjectiveOrder;
import org.loomwright.model.loom.RunFact;
import org.loomwright.model.loom.Trunk;
import org.loomwright.quantity.Tolerance;

/** Builds one drawing or harness. */
final class WiringBuilder extends Builder {
    private final List<Sheet> sheets = new ArrayList<>();
    private final FactList<Tolerance> tolerances = new FactList<>();
    private final FactList<Ref> cables = new FactList<>();
    private Optional<Ref> datum = Optional.empty();
    private final List<Run> runs = new ArrayList<>();
    private final List<Connector> connectors = new ArrayList<>();
    private final List<Stud> studs = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<Circuit> circuits = new ArrayList<>();
    private final List<Placed> placed = new ArrayList<>();
    private final List<Ref> covers = new ArrayList<>();
    private final List<Setting> settings = new ArrayList<>();
    private final List<Cap> caps = new ArrayList<>();
    private final List<Objective> order = new ArrayList<>();
    private final CircuitBuilder circuitBuilder;

    WiringBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
        circuitBuilder = new CircuitBuilder(file, quantities);
    }

    Wiring build(org.loomwright.model.loom.Wiring source) {
        boolean ours = source instanceof org.loomwright.model.loom.Harness;
        List<? extends EObject> facts = source instanceof org.loomwright.model.loom.Harness harness ? harness.getFacts()
                : ((org.loomwright.model.loom.Drawing) source).getFacts();
        facts.forEach(this::add);
        Written written = of(source);
        return new Wiring(ours ? Wiring.Kind.HARNESS : Wiring.Kind.DRAWING, written.name("name"),
                text(source.getTitle()), written.needed("platform"), written.ref("position"), when(source.getWhen()),
                List.copyOf(sheets), new Defaults(tolerances.facts(), cables.facts()), datum, List.copyOf(runs),
                List.copyOf(connectors), List.copyOf(studs), List.copyOf(devices), List.copyOf(circuits),
                List.copyOf(placed), ours ? new Ours(List.copyOf(covers), List.copyOf(settings), List.copyOf(caps),
                        List.copyOf(order)) : Ours.NONE, written.span());
    }

    private void add(EObject fact) {
        Written written = of(fact);
        Name name = written.name("name");
        Span span = written.span();
        switch (fact) {
            case org.loomwright.model.loom.Sheet each -> sheets.add(new Sheet(text(each.getNumber()),
                    text(each.getIssue()), span));
            case DefaultTolerance each -> lengths.tolerance(each.getTolerance())
                    .ifPresent(tolerance -> tolerances.add(tolerance, when(each.getWhen()), span));
            case CableFact each -> written.ref("cable")
                    .ifPresent(cable -> cables.add(cable, when(each.getWhen()), span));
            case Datum each -> {
                if (datum.isPresent()) {
                    file.again(span, "datum");
                } else {
                    datum = written.ref("place");
                }
            }
            case Trunk each -> runs.add(run(Run.Kind.TRUNK, written, Optional.empty(), each.getFacts(), when(
                    each.getWhen())));
            case Branch each -> runs.add(run(Run.Kind.BRANCH, written, lengths.measure(each.getLength()),
                    each.getFacts(), when(each.getWhen())));
            case org.loomwright.model.loom.Connector each -> connectors.add(connector(each, written));
            case org.loomwright.model.loom.Stud each -> studs.add(new Stud(name, written.ref("place"),
                    written.ref("branch"), written.ref("ground"), when(each.getWhen()), span));
            case org.loomwright.model.loom.Device each -> devices.add(device(each));
            case org.loomwright.model.loom.Circuit each -> circuits.add(circuitBuilder.build(each));
            case org.loomwright.model.loom.Placed each -> placed.add(new Placed(name, written.needed("part"),
                    lengths.location(each.getFrom()).orElse(new Location(Optional.empty(), Optional.empty(),
                            Optional.empty())),
                    lengths.location(each.getTo()), when(each.getWhen()), span));
            default -> addOurs(fact, written);
        }
    }

    private void addOurs(EObject fact, Written written) {
        Span span = written.span();
        switch (fact) {
            case Covers each -> covers.addAll(written.refs("drawings"));
            case LimitSetting each -> settings.add(new Setting(SettingKind.valueOf(each.getKind().name()),
                    lengths.quantity(each.getValue()), Optional.empty(), written.ref("place"), span));
            case MadeSetting each -> settings.add(new Setting(each.getKind() == MadeKind.BRANCH
                    ? SettingKind.BRANCH_TOLERANCE : SettingKind.BREAKOUT_TOLERANCE, Optional.empty(),
                    lengths.tolerance(each.getTolerance()), written.ref("place"), span));
            case org.loomwright.model.loom.Cap each -> caps.add(new Cap(written.needed("branch"),
                    written.ref("parkedAt"), lengths.quantity(each.getWithin()), when(each.getWhen()), span));
            case ObjectiveOrder each -> {
                if (!order.isEmpty()) {
                    file.again(span, "order of objectives");
                } else {
                    each.getOrder().forEach(objective -> order.add(Objective.valueOf(objective.name())));
                }
            }
            default -> { }
        }
    }

    private Run run(Run.Kind kind, Written written, Optional<org.loomwright.harness.Measure> length,
            List<RunFact> facts, org.loomwright.condition.Expression when) {
        List<Run.Breakout> breakouts = new ArrayList<>();
        List<Run.Barrier> barriers = new ArrayList<>();
        List<Run.Slack> slacks = new ArrayList<>();
        List<Run.Bend> bends = new ArrayList<>();
        for (RunFact fact : facts) {
            Written line = of(fact);
            Span span = line.span();
            switch (fact) {
                case org.loomwright.model.loom.Breakout each -> breakouts.add(new Run.Breakout(line.name("name"),
                        line.ref("after"), lengths.needed(each.getAt(), span), when(each.getWhen()), span));
                case org.loomwright.model.loom.Barrier each -> barriers.add(new Run.Barrier(line.name("name"),
                        lengths.needed(each.getAt(), span), span));
                case org.loomwright.model.loom.Bend each -> lengths.quantity(each.getRadius())
                        .ifPresent(radius -> bends.add(new Run.Bend(line.name("name"),
                                lengths.needed(each.getAt(), span), radius, when(each.getWhen()), span)));
                case org.loomwright.model.loom.Slack each -> lengths.quantity(each.getAtMost())
                        .ifPresent(most -> slacks.add(new Run.Slack(line.needed("before"), most, span)));
                default -> { }
            }
        }
        boolean branch = kind == Run.Kind.BRANCH;
        return new Run(kind, written.name("name"), branch ? written.ref("from") : Optional.empty(),
                branch ? written.ref("to") : Optional.empty(), length, List.copyOf(breakouts), List.copyOf(barriers),
                List.copyOf(slacks), List.copyOf(bends), when, written.span());
    }

    private Connector connector(org.loomwright.model.loom.Connector source, Written written) {
        FactList<Ref> housing = new FactList<>();
        FactList<Ref> mates = new FactList<>();
        List<CavityFact> cavities = new ArrayList<>();
        List<Ref> covered = new ArrayList<>();
        written.ref("housing").ifPresent(part -> housing.add(part, part.span()));
        written.ref("mate", "mateOwner").ifPresent(mate -> mates.add(mate, mate.span()));
        source.getFacts().forEach(fact -> {
            Written line = of(fact);
            switch (fact) {
                case IsFact each -> addPart(each, housing);
                case MatesFact each -> line.ref("mate", "owner")
                        .ifPresent(mate -> mates.add(mate, when(each.getWhen()), line.span()));
                case org.loomwright.model.loom.CavityFact each -> cavities.add(new CavityFact(
                        CavityKind.valueOf(each.getKind().name()), line.name("cavity"),
                        line.ref("part").orElseGet(() -> line.needed("mate")), when(each.getWhen()), line.span()));
                case ForFact each -> covered.addAll(line.refs("drawings"));
                default -> { }
            }
        });
        return new Connector(written.name("name"), text(source.getTitle()), written.ref("place"), written.ref("branch"),
                housing.facts(), mates.facts(), List.copyOf(cavities), List.copyOf(covered), when(source.getWhen()),
                written.span());
    }
}
