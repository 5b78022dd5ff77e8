// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.electric.connection.PartFacts;
import org.loomwright.electric.solve.Element;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;

/** What the figures of a load, as a catalogue states them, come to. */
final class LoadModels {

    /** The case of a part, as a pin. */
    static final String CASE = "case";

    /**
     * One load inside a part.
     *
     * @param from  a pin
     * @param to    the other pin; {@link #CASE} for the part's own
     * @param model what it does
     * @param join  the connection that states it; empty for the part as a whole
     */
    record Inside(String from, String to, Model.Working model, Optional<Part.Join> join) {
    }

    private LoadModels() {
    }

    /** The design voltage in V: the lower end of a range for what works in one, else the figure. */
    static Optional<Double> volts(Part part) {
        return part.figure(Part.FigureKind.VOLTAGE)
                .filter(each -> each.from().unit().dimension() == Dimension.VOLTAGE && each.from().si() > 0)
                .map(each -> each.upTo().map(upTo -> (each.from().si() + upTo.si()) / 2).orElse(each.from().si()));
    }

    /** What works inside a part. Empty when it states no figure. */
    static List<Inside> of(Part part, double nominal, boolean grounded) {
        double volts = volts(part).orElse(nominal);
        List<Inside> all = new ArrayList<>();
        for (Part.Join join : part.joins()) {
            if (!PartFacts.conducts(part, join) && join.through().filter(each -> each.si() > 0).isPresent()) {
                amps(join.through().get(), volts).map(amps -> model(part, volts, amps, volts(part).isPresent()))
                        .ifPresent(model -> all.add(new Inside(join.from().text(), join.to().text(), model,
                                Optional.of(join))));
            }
        }
        if (!all.isEmpty()) {
            return all;
        }
        Optional<Double> amps = figure(part, Part.FigureKind.POWER, Dimension.POWER).map(watts -> watts / volts)
                .or(() -> figure(part, Part.FigureKind.CURRENT, Dimension.CURRENT))
                .or(() -> figure(part, Part.FigureKind.RESISTANCE, Dimension.RESISTANCE).map(ohms -> volts / ohms));
        List<String> pins = PartFacts.loadPins(part).stream().filter(pin -> !pin.equals(CASE)).toList();
        if (amps.isEmpty() || pins.isEmpty()) {
            return List.of();
        }
        Model.Working model = model(part, volts, amps.get(), volts(part).isPresent());
        if (pins.size() == 1) {
            return grounded || part.hasPin(CASE) ? List.of(new Inside(pins.getFirst(), CASE, model, Optional.empty()))
                    : List.of();
        }
        String feed = part.word(Part.WordKind.POLARITY).filter(pins::contains).orElse(pins.getFirst());
        String common = pins.getLast().equals(feed) ? pins.getFirst() : pins.getLast();
        return List.of(new Inside(feed, common, model, Optional.empty()));
    }

    private static Optional<Double> amps(Quantity through, double volts) {
        return switch (through.unit().dimension()) {
            case RESISTANCE -> Optional.of(volts / through.si());
            case POWER -> Optional.of(through.si() / volts);
            case CURRENT -> Optional.of(through.si());
            default -> Optional.empty();
        };
    }

    private static Model.Working model(Part part, double volts, double amps, boolean stated) {
        String type = part.word(Part.WordKind.TYPE).orElse("");
        double stall = figure(part, Part.FigureKind.STALL, Dimension.CURRENT).orElse(0.0);
        if (type.equals("led") || type.equals("electronic")) {
            double dropOut = part.figure(Part.FigureKind.VOLTAGE).filter(each -> each.upTo().isPresent())
                    .map(each -> each.from().si()).filter(each -> each > 0).orElse(volts * Usual.DROP_OUT);
            return new Model.Working(new Element.Electronic(amps * volts, dropOut, false), volts, amps, stall);
        }
        boolean filament = part.kind() == Part.Kind.LAMP && stated;
        return new Model.Working(filament ? new Element.Filament(volts, amps) : new Element.Resistor(volts / amps),
                volts, amps, stall);
    }

    /** A figure in its SI unit, when it is one of that dimension and positive. */
    static Optional<Double> figure(Part part, Part.FigureKind kind, Dimension dimension) {
        return part.figure(kind).map(Part.Figure::from).filter(each -> each.unit().dimension() == dimension)
                .map(Quantity::si).filter(each -> each > 0);
    }

    /** The pin that all loads of a part have in common; empty when there is none. */
    static Optional<String> common(List<Inside> all) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        all.forEach(each -> {
            counts.merge(each.from(), 1, Integer::sum);
            counts.merge(each.to(), 1, Integer::sum);
        });
        return all.isEmpty() ? Optional.empty() : all.size() == 1 ? Optional.of(all.getFirst().to())
                : counts.entrySet().stream().filter(each -> each.getValue() == all.size()).map(Map.Entry::getKey)
                        .findFirst();
    }
}
