// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.sizing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.ampacity.Gauges;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.protection.OpeningTimes;
import org.loomwright.electric.protection.Protector;
import org.loomwright.electric.survey.ConductorFaults;
import org.loomwright.electric.thermal.Around;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;

/**
 * The least fuse that carries its loads and the smallest gauge that bears what flows, bears that fuse and keeps the
 * drops of its loads, over everything that {@link Demands} was shown. Bundles are counted as they are with the gauges
 * of now. Pure.
 *
 * @param wires  one for each wire that carries current
 * @param fuses  one for each fuse and breaker that carries current
 */
public record Sizes(List<OfWire> wires, List<OfFuse> fuses) {

    /** Ratings that blade fuses are made in (colour code of the trade). */
    public static final List<Double> RATINGS = List.of(1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0,
            35.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0);

    private static final String UNKNOWN = "not judged: its cable states no temperature class";

    /**
     * A wire.
     *
     * @param demand  what it must bear
     * @param now     its size
     * @param least   the smallest that will do; empty when none does
     * @param decides what decides: {@code 8.6 A in mode night}, {@code fuse F1 of 10 A}, {@code drop of Left headlamp}
     */
    public record OfWire(Demands.OfWire demand, ConductorSize now, Optional<ConductorSize> least, String decides) {

        /** Returns whether its size is smaller than the smallest that will do. */
        public boolean tooSmall() {
            return judged() && (least.isEmpty() || least.get().areaMm2() > now.areaMm2() * (1 + 1e-9));
        }

        /** Returns whether enough is known of the wire to say what would do. */
        public boolean judged() {
            return !decides.equals(UNKNOWN);
        }
    }

    /**
     * A fuse.
     *
     * @param demand what it must carry
     * @param least  the least rating in A that will do; empty when none is made
     */
    public record OfFuse(Demands.OfDevice demand, OptionalDouble least) {
    }

    public Sizes {
        wires = List.copyOf(wires);
        fuses = List.copyOf(fuses);
    }

    /**
     * Finds the sizes.
     *
     * @param parts the parts of the catalogue; where it has fuses of a family, those are the ratings of the family
     */
    public static Sizes of(Demands demands, Ratings ratings, Ampacity ampacity, Collection<Part> parts) {
        List<OfFuse> fuses = new ArrayList<>();
        Map<String, Double> carries = new HashMap<>();
        for (Demands.OfDevice each : demands.devices()) {
            Protector device = new Protector(each.device());
            double wanted = each.amps() / ConductorFaults.LASTING * (device.blow() ? 2 : 1);
            OptionalDouble least = ratings(each.device(), parts).stream().mapToDouble(Double::doubleValue)
                    .filter(rating -> rating >= wanted * (1 - 1e-9)).min();
            fuses.add(new OfFuse(each, least));
            least.ifPresent(rating -> carries.put(Demands.key(each.device()), device.blow() ? rating / 2 : rating));
        }
        List<OfWire> wires = new ArrayList<>();
        for (Demands.OfWire each : demands.wires()) {
            if (each.wire().model() instanceof Model.Copper copper) {
                wires.add(wire(each, copper.size(), carries, ratings, ampacity));
            }
        }
        return new Sizes(wires, fuses);
    }

    private static Collection<Double> ratings(Piece device, Collection<Part> parts) {
        Optional<String> family = device.subject().part().flatMap(part -> part.word(Part.WordKind.FAMILY));
        TreeSet<Double> own = new TreeSet<>();
        for (Part part : parts) {
            if (part.kind() == Part.Kind.FUSE && family.isPresent()
                    && part.word(Part.WordKind.FAMILY).equals(family)) {
                part.figure(Part.FigureKind.RATING).map(Part.Figure::from)
                        .filter(each -> each.unit().dimension() == Dimension.CURRENT)
                        .ifPresent(each -> own.add(each.si()));
            }
        }
        return own.size() > 1 ? own : RATINGS;
    }

    private static OfWire wire(Demands.OfWire demand, ConductorSize now, Map<String, Double> carries,
            Ratings ratings, Ampacity ampacity) {
        Around around = ratings.around(demand.wire());
        if (around.classC().isEmpty()) {
            return new OfWire(demand, now, Optional.empty(), UNKNOWN);
        }
        double classC = around.classC().orElse(Ratings.CLASS);
        double ambientC = around.ambientC().orElse(Ratings.AMBIENT);
        double fuse = demand.device().map(Demands::key).map(carries::get).orElse(0.0);
        double limit = around.shortC().orElse(classC + ConductorFaults.SHORT_TIME);
        Optional<ConductorSize> flow = Gauges.smallest(now.system(), size -> ampacity.allowed(size, classC, ambientC, 1)
                .filter(each -> each.base() >= demand.base()).isPresent());
        Optional<ConductorSize> bears = Gauges.smallest(now.system(), size -> ampacity.allowed(size, classC, ambientC,
                demand.bundle()).filter(each -> bears(each, fuse, limit)).isPresent());
        Optional<ConductorSize> keeps = Gauges.smallest(now.system(), size -> size.areaMm2() >= demand.area());
        String device = demand.device().map(Protector::new).map(each -> "least fuse at " + each.piece().subject()
                .label() + ", " + Figure.of(fuse) + " A").orElse("");
        if (flow.isEmpty() || bears.isEmpty() || keeps.isEmpty()) {
            return new OfWire(demand, now, Optional.empty(), flow.isEmpty() ? "none bears its current where it lies"
                    : bears.isEmpty() ? "none bears the " + device : "contacts alone lose too much for "
                            + demand.load());
        }
        ConductorSize least = flow.get();
        String decides = Figure.of(demand.amps(), 1) + " A in mode " + demand.mode();
        if (bears.get().areaMm2() > least.areaMm2()) {
            least = bears.get();
            decides = device;
        }
        if (keeps.get().areaMm2() > least.areaMm2()) {
            least = keeps.get();
            decides = "drop of " + demand.load();
        }
        return new OfWire(demand, now, Optional.of(least), decides);
    }

    private static boolean bears(Allowance allowed, double carries, double limit) {
        return OpeningTimes.FOR_EVER * carries <= allowed.amps()
                && Ratings.temperature(allowed, OpeningTimes.OPENS * carries) <= limit;
    }
}
