// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.survey.Survey.Found;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Cancel;

/** A block with the core, in one mode: a network of its own. The core alone is one with an empty block. */
final class Unit {

    /** A wire counts from this share of the current from which it would, so that rounds come to an end. */
    private static final double NEARLY = 0.95;

    private final Schematic part;
    private final Mode mode;
    private final List<Piece> pieces;
    private final int first;
    private final Stem stem;
    private final List<Inspector> inspectors;
    private final Cells cells;
    private final Map<Junction, Range> draws = new HashMap<>();
    private final Set<Integer> stiff = new HashSet<>();
    private final Set<Integer> feeds = new HashSet<>();
    private final PointSolver cold;
    private final Ratings alone;
    private final PointSolver uncrowded;
    private final Set<WireView> own = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Set<WireView> carrying = Collections.newSetFromMap(new IdentityHashMap<>());
    private final Set<WireView> beside = Collections.newSetFromMap(new IdentityHashMap<>());
    private Ratings crowd;
    private PointSolver crowded;
    private long before;
    private final List<OperatingPoint> low = new ArrayList<>();
    private final List<OperatingPoint> high = new ArrayList<>();
    private Alteration loaded;
    private Alteration relieved;
    private boolean unsolved;

    Unit(Schematic whole, Mode mode, Blocks cut, List<Piece> block, List<Inspector> inspectors, int most) {
        this.mode = mode;
        this.inspectors = inspectors;
        stem = block.isEmpty() ? new Stem(cut.core(), Map.of()) : Stem.of(cut, block);
        pieces = new ArrayList<>(stem.core());
        pieces.addAll(block);
        first = block.isEmpty() ? 0 : stem.core().size();
        part = whole.of(pieces);
        cells = whole.fitment().domain().split(part.conditions(), most);
        for (Collection<Junction> ends : List.of(cut.feeds(), cut.grounds())) {
            ends.forEach(each -> part.placeOf(each).filter(place -> place > 0).ifPresent(stiff::add));
        }
        cut.feeds().forEach(each -> part.placeOf(each).ifPresent(feeds::add));
        pieces.forEach(each -> each.subject().wire().ifPresent(own::add));
        alone = new Ratings(part, Ampacity.cfr());
        crowd = alone;
        cold = new PointSolver(part, Optional.empty(), 20);
        uncrowded = new PointSolver(part, Optional.of(alone), 20);
        crowded = uncrowded;
    }

    /** Returns the wires that carry enough to count as neighbours, over all that was solved; all those of the core. */
    Set<WireView> carrying() {
        return first == 0 ? own : carrying;
    }

    /** Takes the wires that count as neighbours, whether they are its own or not. */
    void crowd(Set<WireView> wires) {
        Set<WireView> others = Collections.newSetFromMap(new IdentityHashMap<>());
        others.addAll(wires);
        others.removeIf(own::contains);
        if (!others.equals(beside)) {
            before += crowded == uncrowded ? 0 : crowded.solves();
            beside.clear();
            beside.addAll(others);
            crowd = new Ratings(part, Ampacity.cfr(), others);
            crowded = new PointSolver(part, Optional.of(crowd), 20);
            loaded = null;
            relieved = null;
        }
    }

    boolean complete() {
        return cells.complete();
    }

    /** Returns whether some assignment has no operating point where the others draw most, or no source. */
    boolean unsolved() {
        return unsolved;
    }

    int assignments() {
        return cells.list().size();
    }

    long solves() {
        return before + cold.solves() + uncrowded.solves() + (crowded == uncrowded ? 0 : crowded.solves());
    }

    /** Returns how much there is to do: pieces times assignments. */
    long work() {
        return (long) pieces.size() * assignments();
    }

    /** Returns what flows into the block from each stiff junction, over all that was solved; nothing for the core. */
    Map<Junction, Range> draws() {
        return first == 0 ? Map.of() : draws;
    }

    /** Solves it as if it were alone, with cold wires. */
    void measure(Cancel cancel) {
        for (Cell cell : cells.list()) {
            cancel.check();
            note(cold.solve(cell.vehicles(), holding(cell), mode, Alteration.NONE));
        }
    }

    /** Solves it while the others draw most, and while they draw least; what was solved before is not solved again. */
    void bound(Map<Junction, Double> most, Map<Junction, Double> least, Cancel cancel) {
        Alteration heavy = alteration(most);
        if (!heavy.equals(loaded)) {
            loaded = heavy;
            relieved = null;
            low.clear();
            for (Cell cell : cells.list()) {
                cancel.check();
                OperatingPoint point = crowded.solve(cell.vehicles(), holding(cell), mode, heavy);
                note(point);
                low.add(point);
            }
        }
        Alteration light = alteration(least);
        if (!light.equals(relieved)) {
            relieved = light;
            high.clear();
            for (Cell cell : cells.list()) {
                cancel.check();
                high.add(alone() ? low.get(high.size()) : crowded.solve(cell.vehicles(), holding(cell), mode, light));
                note(high.getLast());
            }
        }
    }

    private void note(OperatingPoint point) {
        Map<Integer, Double> amps = new HashMap<>();
        stiff.forEach(each -> amps.put(each, 0.0));
        for (int i = first; i < part.pieces().size() && point.solved(); i++) {
            Piece piece = part.pieces().get(i);
            amps.computeIfPresent(part.from(piece), (place, sum) -> sum + point.amps(piece));
            amps.computeIfPresent(part.to(piece), (place, sum) -> sum - point.amps(piece));
        }
        for (int i = first; i < part.pieces().size() && point.solved() && first > 0; i++) {
            Piece piece = part.pieces().get(i);
            double flows = Math.abs(point.amps(piece));
            if (flows > 0 && piece.model() instanceof Model.Copper) {
                piece.subject().wire().filter(each -> !carrying.contains(each) && alone.free(piece)
                        .filter(free -> flows <= NEARLY * Ratings.COUNTS * free.amps()).isEmpty())
                        .ifPresent(carrying::add);
            }
        }
        if (point.solved()) {
            amps.forEach((place, sum) -> draws.merge(part.junctions().get(place), new Range(sum, sum), Range::or));
        }
    }

    /** Returns whether the block hangs from a junction that no source holds in these vehicles. */
    private boolean isLoose(OperatingPoint point) {
        Fed fed = new Fed(point);
        return part.pieces().stream().skip(first).filter(point::conducts).anyMatch(each -> loose(part.from(each), fed)
                || loose(part.to(each), fed));
    }

    private boolean loose(int junction, Fed fed) {
        return feeds.contains(junction) && !fed.isFed(junction);
    }

    private static BitSet holding(Cell cell) {
        BitSet holding = new BitSet();
        cell.holding().forEach(holding::set);
        return holding;
    }

    private Alteration alteration(Map<Junction, Double> rest) {
        Map<Integer, Double> drawn = new HashMap<>();
        rest.forEach((junction, amps) -> part.placeOf(stem.place(junction)).filter(each -> each > 0 && amps != 0)
                .ifPresent(each -> drawn.merge(each, amps, Double::sum)));
        return Alteration.draw(drawn);
    }

    /** Looks for faults at the points that were solved last, with the others drawing most and least. */
    void inspect(Cancel cancel, Map<String, Found> found) {
        Alteration light = relieved;
        for (int i = 0; i < cells.list().size(); i++) {
            cancel.check();
            Cell cell = cells.list().get(i);
            BitSet holding = holding(cell);
            OperatingPoint low = this.low.get(i);
            OperatingPoint high = this.high.get(i);
            unsolved |= isLoose(high);
            unsolved |= high.solved() && !low.solved();
            Map<String, Fault> all = new LinkedHashMap<>();
            if (low.solved() || !high.solved()) {
                all.putAll(faults(low, crowd));
            }
            Map<String, Fault> cool = Map.of();
            if (!alone()) {
                worst(all, faults(high, crowd));
                cool = crowd.hasOthers() ? faults(uncrowded.solve(cell.vehicles(), holding, mode, light), alone)
                        : faults(high, alone);
                worst(all, cool);
            }
            undecided(low, high, all);
            if (alone()) {
                all.forEach((key, fault) -> found.merge(key, new Found(fault, mode, cell.vehicles(), cell.vehicles()),
                        Found::and));
            } else if (!all.isEmpty()) {
                Set<String> sure = new HashSet<>(faults(crowd.hasOthers() ? uncrowded.solve(cell.vehicles(), holding,
                        mode, loaded) : low, alone).keySet());
                sure.retainAll(cool.keySet());
                all.values().stream().filter(Fault::maybe).forEach(each -> sure.remove(each.key()));
                all.values().forEach(each -> each.milder().ifPresent(milder -> sure.remove(milder.key())));
                List.copyOf(all.values()).stream().filter(each -> !sure.contains(each.key())).map(Fault::milder)
                        .flatMap(Optional::stream).forEach(each -> all.putIfAbsent(each.key(), each));
                all.forEach((key, fault) -> found.merge(key, new Found(fault, mode, cell.vehicles(),
                        sure.contains(key) ? cell.vehicles() : none(cell.vehicles())), Found::and));
            }
        }
    }

    private static void worst(Map<String, Fault> all, Map<String, Fault> more) {
        more.forEach((key, fault) -> all.merge(key, fault, (one, other) -> other.weight() > one.weight() ? other
                : one));
    }

    /** Returns whether there is nothing beside it. */
    private boolean alone() {
        return !crowd.hasOthers() && loaded.drawn().isEmpty() && relieved.drawn().isEmpty();
    }

    private static Condition none(Condition vehicles) {
        return vehicles.minus(vehicles);
    }

    /** The faults of one point, those of the core among them, as pieces of the whole network. */
    private Map<String, Fault> faults(OperatingPoint point, Ratings ratings) {
        Map<String, Fault> faults = new LinkedHashMap<>();
        Fed fed = new Fed(point);
        for (Inspector inspector : inspectors) {
            for (Fault fault : inspector.inspect(point, fed, ratings)) {
                faults.merge(fault.key(), fault.with(Survey.owners(point, fault.piece()))
                        .about(pieces.get(fault.piece().index())), (one, other) -> other.weight() > one.weight()
                        ? other : one);
            }
        }
        return faults;
    }

    /** A relay that pulls in or not depending on what others draw. */
    private void undecided(OperatingPoint low, OperatingPoint high, Map<String, Fault> faults) {
        for (Piece piece : low.relays().equals(high.relays()) ? List.<Piece>of() : part.pieces()) {
            String relay = piece.subject().owner() + ":" + piece.subject().element();
            if (piece.role() == Role.COIL && piece.index() >= first && low.conducts(piece)
                    && !low.relays().getOrDefault(relay, false).equals(high.relays().getOrDefault(relay, false))) {
                Fault fault = new Fault("relay-undecided", pieces.get(piece.index()), 1, "relay "
                        + piece.subject().element() + " may pull in or not, depending on what other circuits draw",
                        List.of(), "give its coil the full supply");
                faults.putIfAbsent(fault.key(), fault);
            }
        }
    }
}
