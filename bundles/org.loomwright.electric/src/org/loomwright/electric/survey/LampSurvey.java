// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.solve.Element;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.quantity.Cancel;

/** What the lamps of a network get while the engine runs. To be asked by one thread. */
public final class LampSurvey {

    private final Map<Condition, Integer> places = new IdentityHashMap<>();
    private final Map<Mode, List<Condition>> modes = new LinkedHashMap<>();
    private final PointSolver solver;

    /** Prepares a network; linear in its pieces for each mode. */
    public LampSurvey(Schematic schematic) {
        schematic.conditions().forEach(each -> places.put(each, places.size()));
        schematic.modes().stream().filter(mode -> mode.engine().runs())
                .forEach(mode -> modes.put(mode, Live.conditions(schematic, mode)));
        solver = new PointSolver(schematic, Optional.of(new Ratings(schematic, Ampacity.cfr())), 20);
    }

    /** Returns whether all modes together have no more assignments than a budget. */
    public boolean isWithin(Condition vehicles, int budget) {
        int left = budget;
        for (List<Condition> conditions : modes.values()) {
            Cells cells = vehicles.split(conditions, left + 1);
            left -= cells.list().size();
            if (!cells.complete() || left < 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * The least voltage of each lamp, in the order of the network. Vehicles that do not differ in what carries current
     * are solved once.
     *
     * @param vehicles which ones to look at, of those of the network
     * @return empty where a mode has more than {@link Survey#MOST} assignments
     */
    public Optional<List<LampVolts>> least(Condition vehicles, Cancel cancel) {
        Map<Integer, LampVolts> least = new TreeMap<>();
        for (Map.Entry<Mode, List<Condition>> mode : modes.entrySet()) {
            Cells cells = vehicles.split(mode.getValue(), Survey.MOST);
            if (!cells.complete()) {
                return Optional.empty();
            }
            for (Cell cell : cells.list()) {
                cancel.check();
                BitSet holding = new BitSet();
                cell.holding().forEach(each -> holding.set(places.get(mode.getValue().get(each))));
                note(solver.solve(cell.vehicles(), holding, mode.getKey(), Alteration.NONE), least);
            }
        }
        return Optional.of(new ArrayList<>(least.values()));
    }

    private static void note(OperatingPoint point, Map<Integer, LampVolts> least) {
        if (!point.solved()) {
            return;
        }
        Fed fed = new Fed(point);
        for (Piece piece : point.schematic().pieces()) {
            boolean lamp = piece.role() == Role.LOAD && piece.model() instanceof Model.Working working
                    && working.element() instanceof Element.Filament;
            if (lamp && point.conducts(piece) && fed.works(piece)) {
                least.merge(piece.index(), new LampVolts(piece, Math.abs(point.volts(piece)), point.mode(),
                        point.vehicles()), LampVolts::worse);
            }
        }
    }
}
