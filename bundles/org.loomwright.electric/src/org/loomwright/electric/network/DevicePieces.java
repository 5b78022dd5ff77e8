// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Load;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Supply;
import org.loomwright.electric.solve.Element;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.quantity.Dimension;

/** What works in a network: loads, coils, sources. */
final class DevicePieces {

    private final SchematicBuilder builder;
    private final Connections connections;
    private final double nominal;

    DevicePieces(SchematicBuilder builder, Connections connections, double nominal) {
        this.builder = builder;
        this.connections = connections;
        this.nominal = nominal;
    }

    static boolean isBattery(Supply supply) {
        return supply.type().equals("battery") || supply.type().isEmpty();
    }

    /**
     * Adds them all.
     *
     * @param assumed whether a supply is assumed behind an open cavity
     */
    void add(boolean assumed) {
        boolean fed = assumed;
        for (Supply supply : connections.supplies()) {
            source(supply);
            fed = true;
        }
        if (!fed) {
            String platform = connections.fitment().platform().name();
            builder.remark(new Subject(platform, "", "platform " + platform,
                    connections.fitment().platform().platform().span(), Optional.empty(), Optional.empty(),
                    Optional.empty()), connections.fitment().domain(),
                    "there is no source of current: nothing is computed");
        }
        connections.loads().forEach(this::load);
    }

    private Optional<Point> ground(DeviceView device) {
        return device.device().grounded().map(each -> (Point) new Point.Ground(
                connections.fitment().platform().name(), each.text())).filter(connections.grounds()::containsKey);
    }

    private static Subject subject(DeviceView device, Part part, String more) {
        String title = device.device().title().isEmpty() ? device.name() : device.device().title();
        return new Subject(device.owner(), device.name(), title + more, device.device().name().span(),
                Optional.empty(), Optional.of(device), Optional.of(part));
    }

    private void load(Load load) {
        Part part = load.part();
        DeviceView device = load.device();
        Optional<Point> ground = ground(device);
        boolean cranking = part.word(Part.WordKind.TYPE).filter("cranking"::equals).isPresent();
        if (cranking) {
            starter(load, ground);
        }
        List<LoadModels.Inside> inside = new ArrayList<>(LoadModels.of(part, nominal, ground.isPresent()));
        inside.removeIf(each -> cranking && each.join().isEmpty());
        if (inside.isEmpty() && !cranking) {
            builder.remark(subject(device, part, ""), load.when(), ground.isEmpty() && load.pins().size() == 1
                    ? "nothing leads its current back; it is left out"
                    : "its part " + part.name() + " states neither power, current nor resistance; it is left out");
            return;
        }
        boolean touchesCase = !part.word(Part.WordKind.TYPE).filter("led"::equals).isPresent();
        Function<String, Junction> at = pin -> pin.equals(LoadModels.CASE) && !part.hasPin(LoadModels.CASE)
                ? Junction.at(ground.orElseThrow()) : Junction.at(new Point.Spot(device.pin(pin)));
        LoadModels.common(inside).filter(pin -> ground.isPresent() && touchesCase && !part.hasPin(LoadModels.CASE)
                && !pin.equals(LoadModels.CASE) && (inside.size() > 1 || inside.getFirst().to().equals(pin)))
                .ifPresent(pin -> {
                    builder.uses(new Point.Spot(device.pin(pin)));
                    builder.add(at.apply(pin), Junction.at(ground.get()), load.when(), Role.GROUND_JOINT,
                            subject(device, part, ", case"), Gate.ALWAYS, new Model.Fixed(Usual.BOLTED), 0,
                            "common practice");
                });
        Set<String> pins = new HashSet<>();
        for (LoadModels.Inside each : inside) {
            boolean relay = part.kind() == Part.Kind.RELAY;
            Condition when = each.join().map(join -> load.when().and(load.when().vehicles().resolve(join.when())
                    .condition())).orElse(load.when());
            String words = inside.size() > 1 ? ", " + title(part, each.from()) : "";
            boolean turned = part.word(Part.WordKind.POLARITY).filter(each.to()::equals).isPresent();
            builder.add(at.apply(turned ? each.to() : each.from()), at.apply(turned ? each.from() : each.to()), when,
                    relay ? Role.COIL : Role.LOAD, subject(device, part, words), gate(device, part, each),
                    each.model(), each.model().amps(), "");
            pins.add(each.from());
            pins.add(each.to());
        }
        pins.stream().filter(pin -> part.hasPin(pin)).forEach(pin -> builder.uses(new Point.Spot(device.pin(pin))));
    }

    private static String title(Part part, String pin) {
        return part.pins().stream().filter(each -> each.name().text().equals(pin)).map(Part.Pin::title)
                .filter(each -> !each.isEmpty()).findFirst().orElse(pin);
    }

    private static Gate gate(DeviceView device, Part part, LoadModels.Inside inside) {
        if (inside.join().isEmpty() || inside.join().get().states().isEmpty()) {
            return Gate.ALWAYS;
        }
        Set<String> states = new HashSet<>();
        inside.join().get().states().forEach(each -> states.add(each.text()));
        return new Gate.While(device.owner(), device.name(),
                part.states().isEmpty() ? "" : part.states().getFirst().text(), states, false);
    }

    /** The cranking motor turns while the engine is cranked; its solenoid is a load of its own. */
    private void starter(Load load, Optional<Point> ground) {
        Part part = load.part();
        double volts = LoadModels.volts(part).orElse(nominal);
        Optional<Double> amps = LoadModels.figure(part, Part.FigureKind.CURRENT, Dimension.CURRENT);
        List<String> pins = part.pins().stream().map(pin -> pin.name().text())
                .filter(pin -> !pin.equals(LoadModels.CASE)).toList();
        if (amps.isEmpty() || pins.isEmpty() || ground.isEmpty()) {
            return;
        }
        DeviceView device = load.device();
        Junction back = Junction.at(ground.get());
        builder.uses(new Point.Spot(device.pin(pins.getFirst())));
        builder.add(Junction.at(new Point.Spot(device.pin(pins.getFirst()))), back, load.when(), Role.LOAD,
                subject(device, part, ""), new Gate.Cranking(), new Model.Working(
                        new Element.Resistor(volts / amps.get()), volts, amps.get(), 0), amps.get(), "");
        if (pins.size() > 1 && part.joins().isEmpty()) {
            builder.uses(new Point.Spot(device.pin(pins.get(1))));
            builder.add(Junction.at(new Point.Spot(device.pin(pins.get(1)))), back, load.when(), Role.LOAD,
                    subject(device, part, ", solenoid"), Gate.ALWAYS, new Model.Working(
                            new Element.Resistor(nominal / Usual.SOLENOID), nominal, Usual.SOLENOID, 0),
                    Usual.SOLENOID, "common practice");
        }
    }

    private void source(Supply supply) {
        Part part = supply.part();
        DeviceView device = supply.device();
        Optional<Point> ground = ground(device);
        Subject subject = subject(device, part, "");
        if (supply.live().isEmpty()) {
            return;
        }
        Junction live = Junction.at(supply.live().getFirst());
        supply.live().forEach(builder::uses);
        Optional<Point> back = back(supply);
        if (back.isEmpty() && ground.isEmpty()) {
            builder.remark(subject, supply.when(), "nothing leads its current back; it is left out");
            return;
        }
        back.ifPresent(builder::uses);
        if (back.isPresent() && ground.isPresent() && !part.hasPin(LoadModels.CASE)) {
            builder.add(Junction.at(back.get()), Junction.at(ground.get()), supply.when(), Role.GROUND_JOINT,
                    subject(device, part, ", ground lead"), Gate.ALWAYS, new Model.Fixed(Usual.BOLTED), 0,
                    "common practice");
        }
        Junction from = Junction.at(back.or(() -> ground).orElseThrow());
        Optional<Double> volts = LoadModels.volts(part);
        if (volts.isEmpty()) {
            builder.remark(subject, supply.when(), "its part " + part.name()
                    + " states no voltage; the supply's is taken");
        }
        if (isBattery(supply)) {
            double ohms = LoadModels.figure(part, Part.FigureKind.RESISTANCE, Dimension.RESISTANCE)
                    .orElse(Usual.BATTERY * nominal / 12);
            builder.add(live, from, supply.when(), Role.BATTERY, subject, Gate.ALWAYS,
                    new Model.Accumulator(volts.orElse(nominal * 1.05), ohms), 0, part.name().text());
            return;
        }
        Optional<Double> amps = LoadModels.figure(part, Part.FigureKind.CURRENT, Dimension.CURRENT)
                .or(() -> LoadModels.figure(part, Part.FigureKind.RATING, Dimension.CURRENT));
        if (amps.isEmpty()) {
            builder.remark(subject, supply.when(), "its part " + part.name()
                    + " states no current; it is taken to give none");
            return;
        }
        double idle = supply.type().equals("generator") ? Usual.GENERATOR_IDLE : Usual.ALTERNATOR_IDLE;
        builder.add(live, from, supply.when(), Role.MACHINE, subject, Gate.ALWAYS,
                new Model.Charging(volts.orElse(Usual.REGULATED * nominal / 12), amps.get(), idle), amps.get(),
                part.name().text());
        for (LoadModels.Inside each : LoadModels.of(part, nominal, ground.isPresent())) {
            if (each.join().isPresent()) {
                builder.uses(new Point.Spot(device.pin(each.from())));
                builder.add(Junction.at(new Point.Spot(device.pin(each.from()))),
                        each.to().equals(LoadModels.CASE) ? from : Junction.at(new Point.Spot(device.pin(each.to()))),
                        supply.when(), Role.INSIDE, subject(device, part, ", " + title(part, each.from())),
                        new MachineGate(each.join().get()).gate(part),
                        new Model.Fixed(each.model().volts() / each.model().amps()), 0, part.name().text());
            }
        }
    }

    /** A connection inside a machine that is closed while it turns, or while it stands. */
    private record MachineGate(Part.Join join) {
        Gate gate(Part part) {
            String standing = part.states().isEmpty() ? "" : part.states().getFirst().text();
            return join.states().isEmpty() ? Gate.ALWAYS
                    : new Gate.Turning(join.states().stream().noneMatch(each -> each.text().equals(standing)));
        }
    }

    private static Optional<Point> back(Supply supply) {
        Part part = supply.part();
        Function<String, Optional<Point>> pin = name -> Optional.of(new Point.Spot(supply.device().pin(name)));
        if (part.hasPin(LoadModels.CASE)) {
            return pin.apply(LoadModels.CASE);
        }
        return part.pins().size() < 2 ? Optional.empty()
                : supply.returns().isEmpty() ? Optional.empty() : Optional.of(supply.returns().getLast());
    }
}
