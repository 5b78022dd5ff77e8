// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.protection;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.network.Usual;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Part;

/**
 * The ways by which a battery feeds each conductor in one operating point, each by that of the least resistance, with
 * what a dead short at its end draws at least and at most.
 *
 * <p>The least current is (E - U) / R: E the flat battery at rest, R its resistance and that of the way, wires at 80 C
 * and contacts worn, with the return through the body, U what the loads of the operating point already lose on that
 * way. By the theorem of Thévenin and since a second way only adds to a current, a short draws no less, as long as the
 * loads give way no faster than resistors do. Where current has two ways nothing is said about the wires of either, and
 * nothing of what lies behind a ballast or another resistance on purpose.
 * n log n in the pieces; immutable. Machines are left out of the least current, they only add to it.
 */
public final class FeedTree {

    /** What the way back through a body adds to a short, in ohm (common practice). */
    public static final double BODY_RETURN = 0.02;
    /** What a worn contact has more than a good one, in ohm (common practice). */
    public static final double WORN = 0.003;
    /** Temperature in C of wires when a short draws least. */
    public static final double HOT = 80;
    /** Temperature in C of wires when a short draws most. */
    public static final double COLD = 20;

    private final Schematic schematic;
    private final OperatingPoint point;
    private final Piece battery;
    private final double[] ohms;
    private final int[] by;
    private final BitSet single;
    private final List<List<Piece>> at;
    private final double delivered;
    private final double machines;

    private FeedTree(OperatingPoint point, Piece battery) {
        this.point = point;
        this.schematic = point.schematic();
        this.battery = battery;
        int junctions = schematic.junctions().size();
        at = new ArrayList<>();
        for (int i = 0; i < junctions; i++) {
            at.add(new ArrayList<>());
        }
        double out = 0;
        double most = 0;
        for (Piece piece : schematic.pieces()) {
            if (point.conducts(piece) && piece.role().passes() && !limits(piece)) {
                at.get(schematic.from(piece)).add(piece);
                at.get(schematic.to(piece)).add(piece);
            } else if (point.conducts(piece) && (piece.role() == Role.BATTERY || piece.role() == Role.MACHINE)) {
                out -= point.amps(piece);
                most += piece.role() == Role.MACHINE ? piece.rating() : 0;
            }
        }
        delivered = Math.max(0, out);
        machines = most;
        ohms = new double[junctions];
        by = new int[junctions];
        spread();
        single = new Bridges(schematic, at, schematic.from(battery)).found();
    }

    /** Returns the ways of an operating point; empty where no battery feeds anything. */
    public static Optional<FeedTree> of(OperatingPoint point) {
        return point.schematic().pieces().stream()
                .filter(each -> each.role() == Role.BATTERY && point.conducts(each)).findFirst()
                .map(each -> new FeedTree(point, each));
    }

    /** A resistance on purpose limits the current behind it, so that no device need open there. */
    private boolean limits(Piece piece) {
        return piece.model() instanceof Model.Fixed fixed && fixed.ohms() >= schematic.fitment().platform().limits()
                .si(Limit.DROPPING_RESISTANCE);
    }

    private void spread() {
        Arrays.fill(ohms, Double.POSITIVE_INFINITY);
        Arrays.fill(by, -1);
        record Mark(int junction, double ohms) {
        }
        PriorityQueue<Mark> queue = new PriorityQueue<>(Comparator.comparingDouble(Mark::ohms)
                .thenComparingInt(Mark::junction));
        int start = schematic.from(battery);
        ohms[start] = 0;
        queue.add(new Mark(start, 0));
        while (!queue.isEmpty()) {
            Mark mark = queue.remove();
            if (mark.ohms() > ohms[mark.junction()] || mark.junction() == 0) {
                continue;
            }
            for (Piece piece : at.get(mark.junction())) {
                int other = other(piece, mark.junction());
                double sum = mark.ohms() + ohms(piece, HOT, WORN);
                if (sum < ohms[other]) {
                    ohms[other] = sum;
                    by[other] = piece.index();
                    queue.add(new Mark(other, sum));
                }
            }
        }
    }

    private int other(Piece piece, int junction) {
        return schematic.from(piece) == junction ? schematic.to(piece) : schematic.from(piece);
    }

    private static double ohms(Piece piece, double celsius, double worn) {
        return switch (piece.model()) {
            case Model.Copper copper -> copper.metres() * copper.size().ohmPerMetre(celsius);
            case Model.Fixed fixed -> fixed.ohms() + (piece.role() == Role.CONTACT
                    || piece.role() == Role.GROUND_JOINT ? worn : 0);
            default -> 0;
        };
    }

    /** Returns the end of a piece that lies farther from the battery; -1 where the battery feeds it not or two ways. */
    public int far(Piece piece) {
        int far = by[schematic.to(piece)] == piece.index() ? schematic.to(piece)
                : by[schematic.from(piece)] == piece.index() ? schematic.from(piece) : -1;
        return far > 0 && single.get(piece.index()) ? far : -1;
    }

    /** Returns the pieces between the battery and a junction that it feeds, the nearest to the battery first. */
    public List<Piece> way(int junction) {
        List<Piece> way = new ArrayList<>();
        for (int place = junction; by[place] >= 0;) {
            Piece piece = schematic.pieces().get(by[place]);
            way.add(piece);
            place = other(piece, place);
        }
        Collections.reverse(way);
        return way;
    }

    /** Returns whether all current to a piece comes by one way, and through it. */
    public boolean single(Piece piece) {
        return single.get(piece.index());
    }

    /** Returns the protective devices before a junction, the nearest to the battery first. */
    public List<Piece> devices(int junction) {
        return way(junction).stream().filter(each -> each.role().protects()).toList();
    }

    /** Returns the least current in A of a dead short at a junction that the battery feeds. */
    public double least(int junction) {
        Model.Accumulator model = (Model.Accumulator) battery.model();
        double inner = 2 * model.ohms();
        double loop = inner + ohms[junction] + back() + BODY_RETURN;
        double lost = inner * delivered;
        for (Piece piece : way(junction)) {
            lost += ohms(piece, HOT, WORN) * Math.abs(point.amps(piece));
        }
        return Math.max(0, model.volts() * Model.Accumulator.FLAT - lost) / loop;
    }

    /**
     * Returns a bound that the current in A of a dead short at a junction does not pass: full battery, 20 C, good
     * contacts, machines at their most. Where current has two ways on the way there, only the battery limits it.
     */
    public double most(int junction) {
        Model.Accumulator model = (Model.Accumulator) battery.model();
        double loop = model.ohms();
        for (Piece piece : way(junction)) {
            loop += single.get(piece.index()) ? ohms(piece, COLD, 0) : 0;
        }
        return model.volts() / loop + machines;
    }

    /** Returns whether the resistance of the battery is stated by its part. */
    public boolean batteryStated() {
        return battery.subject().part().flatMap(part -> part.figure(Part.FigureKind.RESISTANCE))
                .isPresent();
    }

    /** Returns the resistance in ohm of the battery, for people who ask. */
    public double batteryOhms() {
        return ((Model.Accumulator) battery.model()).ohms();
    }

    /** Returns the voltage in V of the flat battery at rest. */
    public double flatVolts() {
        return ((Model.Accumulator) battery.model()).volts() * Model.Accumulator.FLAT;
    }

    /** The lead from ground back to the battery: a joint, where the battery has a pole of its own for it. */
    private double back() {
        return schematic.to(battery) == 0 ? 0 : Usual.BOLTED + WORN;
    }
}
