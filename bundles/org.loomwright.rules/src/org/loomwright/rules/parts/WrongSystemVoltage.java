// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Link;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.Case;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A device made for another supply than the platform has: a 6 V motor on 12 V. One that a resistor feeds may be made
 * for less.
 */
public final class WrongSystemVoltage implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("wrong-system-voltage",
            "Is every device made for the platform's supply?", Severity.ERROR, Kind.TRANSCRIPTION,
            Scope.PROTECTION_TREE,
            "common practice: design voltages lie between 0.75 and 1.35 times the nominal voltage of the supply");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        Limits limits = target.connections().fitment().platform().limits();
        Optional<Platform.Supply> supply = target.connections().fitment().platform().platform().supply()
                .filter(each -> isVoltage(each.voltage()) && each.voltage().signum() > 0);
        if (supply.isEmpty()) {
            return;
        }
        List<FittedDevice> devices = FittedDevice.of(target.connections().fitment());
        Map<Point, FittedDevice> resistors = new LinkedHashMap<>();
        devices.stream().filter(each -> isResistor(each, limits)).forEach(each -> each.part().pins()
                .forEach(pin -> resistors.put(each.pin(pin.name().text()), each)));
        for (FittedDevice device : devices) {
            if (hasDesignVoltage(device.part())) {
                for (Case<Part.Figure> figure : PartFacts.figures(device.part(), Part.FigureKind.VOLTAGE,
                        device.when())) {
                    findings.checkCancelled();
                    figure(target.connections(), supply.get(), device, figure, resistors, findings);
                }
            }
        }
    }

    private static boolean isVoltage(Quantity quantity) {
        return quantity.unit().dimension() == Dimension.VOLTAGE;
    }

    private static boolean hasDesignVoltage(Part part) {
        return switch (part.kind()) {
            case LAMP, MOTOR, LOAD, RELAY, FLASHER, SOURCE -> true;
            default -> false;
        };
    }

    private static void figure(Connections connections, Platform.Supply supply, FittedDevice device,
            Case<Part.Figure> figure, Map<Point, FittedDevice> resistors, Findings findings) {
        Part.Figure stated = figure.value();
        if (!isVoltage(stated.from()) || stated.upTo().filter(upTo -> !isVoltage(upTo)).isPresent()) {
            return;
        }
        Limits limits = connections.fitment().platform().limits();
        double leastShare = limits.si(Limit.VOLTAGE_AT_LEAST);
        double mostShare = limits.si(Limit.VOLTAGE_AT_MOST);
        double nominal = supply.voltage().si();
        double from = stated.from().si() / nominal;
        double upTo = stated.upTo().map(Quantity::si).map(each -> each / nominal).orElse(from);
        boolean low = Math.max(from, upTo) < leastShare;
        if (!low && Math.min(from, upTo) <= mostShare) {
            return;
        }
        Condition when = figure.when();
        if (low && device.part().kind() != Part.Kind.SOURCE) {
            when = when.minus(lowered(connections, device, resistors));
        }
        String voltage = stated.from() + stated.upTo().map(each -> " .. " + each).orElse("");
        Draft draft = findings.about(device.view().owner(), device.name(), "device " + device.name()).when(when)
                .key(device.part().name() + " " + voltage)
                .at(device.view().device().name().span(), "made for " + voltage)
                .see(figure.span(), "part " + device.part().name())
                .see(supply.span(), "the platform's supply")
                .see(limits.place(low ? Limit.VOLTAGE_AT_LEAST : Limit.VOLTAGE_AT_MOST), "the practice's limit")
                .says(device.name() + " is made for " + voltage + ", and the platform's supply has "
                        + supply.voltage())
                .step((low ? Math.max(from, upTo) == from ? stated.from() : stated.upTo().orElseThrow()
                        : stated.from()) + " / " + supply.voltage() + " = "
                        + Figure.of(low ? Math.max(from, upTo) : Math.min(from, upTo), 2) + ", outside "
                        + Figure.of(leastShare, 2) + " to " + Figure.of(mostShare, 2) + " ("
                        + limits.cite(low ? Limit.VOLTAGE_AT_LEAST : Limit.VOLTAGE_AT_MOST) + ")")
                .advise("fit the part for " + supply.voltage()
                        + (low ? ", or write the resistor that feeds it as the cable or part that it is" : ""));
        draft.report();
    }

    /** In which vehicles a resistor lies beside a device, with nothing but wires and connectors between. */
    private static Condition lowered(Connections connections, FittedDevice device, Map<Point, FittedDevice> resistors) {
        Limits limits = connections.fitment().platform().limits();
        Map<Point, Condition> pins = device.part().pins().stream()
                .collect(Collectors.toMap(pin -> device.pin(pin.name().text()), pin -> device.when(), Condition::or,
                        LinkedHashMap::new));
        Reach near = connections.from(pins, edge -> !lowers(edge, limits) && (edge.isWire()
                || edge.link() instanceof Link.Mated));
        Condition lowered = device.when().vehicles().none();
        for (Map.Entry<Point, Condition> each : near.points().entrySet()) {
            for (Edge edge : connections.edgesAt(each.getKey())) {
                if (lowers(edge, limits)) {
                    lowered = lowered.or(each.getValue().and(edge.when()));
                }
            }
            FittedDevice resistor = resistors.get(each.getKey());
            if (resistor != null && resistor.view() != device.view()) {
                lowered = lowered.or(each.getValue().and(resistor.when()));
            }
        }
        return lowered;
    }

    private static boolean lowers(Edge edge, Limits limits) {
        return switch (edge.link()) {
            case Link.OfWire wire -> wire.cable().filter(cable -> cable.kind() == Part.Kind.RESISTOR_CABLE).isPresent();
            case Link.Inside inside -> inside.join().flatMap(Part.Join::through)
                    .filter(each -> isLarge(each, limits)).isPresent();
            default -> false;
        };
    }

    /** A resistor of its own: it states a resistance and no voltage that it is made for. */
    private static boolean isResistor(FittedDevice device, Limits limits) {
        boolean kind = switch (device.part().kind()) {
            case LOAD, ASSEMBLY, RESISTOR_CABLE -> true;
            default -> false;
        };
        return kind && device.part().figure(Part.FigureKind.VOLTAGE).isEmpty()
                && device.part().figure(Part.FigureKind.RESISTANCE).map(Part.Figure::from)
                        .filter(each -> isLarge(each, limits)).isPresent();
    }

    private static boolean isLarge(Quantity quantity, Limits limits) {
        return quantity.unit().dimension() == Dimension.RESISTANCE
                && quantity.si() >= limits.si(Limit.DROPPING_RESISTANCE);
    }
}
