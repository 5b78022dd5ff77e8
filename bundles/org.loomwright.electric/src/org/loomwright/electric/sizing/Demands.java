// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.sizing;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.protection.FeedTree;
import org.loomwright.electric.survey.Fault;
import org.loomwright.electric.survey.Fed;
import org.loomwright.electric.survey.Inspector;
import org.loomwright.electric.survey.LoadFaults;
import org.loomwright.electric.thermal.Ratings;

/**
 * Collects what the wires and fuses of one network must bear over all operating points that it is shown: it finds no
 * faults. One object for one network; safe for use by several threads.
 */
public final class Demands implements Inspector {

    /**
     * What a wire must bear.
     *
     * @param wire   the wire, as it is where that is most
     * @param amps   the current in A that asks for most
     * @param mode   the mode in which it flows
     * @param base   the current in A that its table must allow it before factors: I / (ambient factor x bundle factor)
     * @param bundle the most wires that count in its bundle in any mode
     * @param area   the section in mm² that keeps the drops of its loads; 0 where they are kept
     * @param load   the load that asks for that section
     * @param device the protective device nearest before it that carries most
     */
    public record OfWire(Piece wire, double amps, String mode, double base, int bundle, double area, String load,
            Optional<Piece> device) {
    }

    /**
     * What a fuse must carry.
     *
     * @param device the fuse or breaker
     * @param amps   the greatest lasting current in A
     * @param mode   the mode in which it flows
     */
    public record OfDevice(Piece device, double amps, String mode) {
    }

    private final Map<String, OfWire> wires = new TreeMap<>();
    private final Map<String, OfDevice> devices = new TreeMap<>();

    @Override
    public synchronized List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        if (!point.solved() || point.mode().engine() == Engine.CRANK) {
            return List.of();
        }
        Optional<FeedTree> feeds = FeedTree.of(point);
        for (Piece piece : point.schematic().pieces()) {
            double amps = Math.abs(point.amps(piece));
            if (!point.conducts(piece) || amps < 1e-3) {
                continue;
            }
            if (piece.role() == Role.WIRE && piece.model() instanceof Model.Copper) {
                wire(point, piece, amps, feeds, ratings);
            } else if (piece.role() == Role.FUSE || piece.role() == Role.BREAKER) {
                OfDevice demand = new OfDevice(piece, amps, point.mode().name());
                devices.merge(key(piece), demand, (one, other) -> other.amps() > one.amps() ? other : one);
            } else if (piece.role() == Role.LOAD && fed.works(piece)) {
                drop(point, piece);
            }
        }
        return List.of();
    }

    private void wire(OperatingPoint point, Piece piece, double amps, Optional<FeedTree> feeds, Ratings ratings) {
        Optional<Allowance> allowed = ratings.allowed(piece, point.vehicles(), point.currents());
        double factor = allowed.map(each -> each.ambient().value() * each.bundle().value()).orElse(1.0);
        Optional<Piece> device = feeds.filter(each -> each.far(piece) > 0).map(each -> each.devices(each.far(piece)))
                .filter(list -> !list.isEmpty()).map(List::getLast).filter(each -> each.role() != Role.LINK);
        join(new OfWire(piece, amps, point.mode().name(), factor > 0 ? amps / factor : Double.POSITIVE_INFINITY,
                allowed.isPresent() ? ratings.bundle(piece, point.vehicles(), point.currents()) : 1, 0, "", device));
    }

    /** Where a load loses more than is allowed, all wires on its way are thickened alike until it does not. */
    private void drop(OperatingPoint point, Piece load) {
        Trail trail = Trail.of(point, load);
        double limit = LoadFaults.dropLimit(point, load);
        double lost = trail.feed() + trail.back();
        double inWires = trail.steps().stream().filter(step -> step.piece().model() instanceof Model.Copper)
                .mapToDouble(Trail.Step::drop).sum();
        double left = limit - (lost - inWires);
        if (lost <= limit || LoadFaults.dropsOnPurpose(point, trail) || Fed.currentShare(point, load) <= 0.3) {
            return;
        }
        for (Trail.Step step : trail.steps()) {
            if (step.piece().role() == Role.WIRE && step.piece().model() instanceof Model.Copper copper) {
                double area = left > 0 ? copper.size().areaMm2() * inWires / left : Double.POSITIVE_INFINITY;
                join(new OfWire(step.piece(), 0, point.mode().name(), 0, 1, area, load.subject().label(),
                        Optional.empty()));
            }
        }
    }

    private void join(OfWire demand) {
        wires.merge(key(demand.wire()), demand, (one, other) -> {
            OfWire hotter = other.base() > one.base() ? other : one;
            OfWire weaker = other.area() > one.area() ? other : one;
            Optional<Piece> device = one.device().isEmpty() ? other.device() : other.device()
                    .filter(each -> each.rating() > one.device().get().rating()).or(one::device);
            return new OfWire(hotter.wire(), hotter.amps(), hotter.mode(), hotter.base(),
                    Math.max(one.bundle(), other.bundle()), weaker.area(), weaker.load(), device);
        });
    }

    static String key(Piece piece) {
        return piece.subject().owner() + ":" + piece.subject().element() + " " + piece.subject().label();
    }

    /** Returns what each wire must bear, by owner and name. */
    public synchronized List<OfWire> wires() {
        return List.copyOf(wires.values());
    }

    /** Returns what each fuse and breaker must carry, by owner and name. */
    public synchronized List<OfDevice> devices() {
        return List.copyOf(devices.values());
    }
}
