// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.condition.Cell;
import org.loomwright.condition.Cells;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.quantity.Cancel;

/**
 * What is wrong in any vehicle and any mode of a network. Vehicles are taken apart by the conditions of what may carry
 * current in the mode; those that do not differ in any of them are solved once. Nothing is sampled. Where a mode has
 * more assignments than a stated number, those beyond are not solved, and the mode is listed as bounded.
 *
 * @param schematic   the network
 * @param found       what is wrong, by rule and piece, in order of rules and pieces
 * @param assignments how many sets of vehicles were told apart, over all modes
 * @param solves      how many networks were solved
 * @param bounded     modes of which some vehicles were not solved
 */
public record Survey(Schematic schematic, List<Found> found, long assignments, long solves, List<Mode> bounded) {

    /** The most assignments of one mode, where nobody says otherwise. */
    public static final int MOST = 4_096;

    /**
     * A fault of one piece over all vehicles and modes.
     *
     * @param fault the worst
     * @param mode  where that is
     * @param when  the vehicles in which the piece may have the fault in some mode
     * @param sure  those of them in which it has it for certain; all of them unless only bounds are known of what
     *              other circuits draw
     */
    public record Found(Fault fault, Mode mode, Condition when, Condition sure) {

        /** Weights that differ by less than this share are the same: rounding must not decide which mode is told. */
        static final double ALIKE = 1e-6;

        /** Joins what was found of the same fault in other vehicles or modes; of the same weight this one stays. */
        Found and(Found other) {
            double least = fault.weight() + ALIKE * Math.abs(fault.weight());
            Found worse = other.fault.weight() > least ? other : this;
            return new Found(worse.fault, worse.mode, when.or(other.when), sure.or(other.sure));
        }

        /** Returns whether all vehicles that may have the fault have it. */
        public boolean exact() {
            return when.equals(sure);
        }
    }

    public Survey {
        found = List.copyOf(found);
        bounded = List.copyOf(bounded);
    }

    /**
     * Looks at every vehicle of a network in some modes.
     *
     * @param most the most assignments of a mode
     */
    public static Survey of(Schematic schematic, List<Mode> modes, List<Inspector> inspectors, int most,
            Cancel cancel) {
        Map<Condition, Integer> places = new IdentityHashMap<>();
        schematic.conditions().forEach(each -> places.put(each, places.size()));
        Ratings ratings = new Ratings(schematic, Ampacity.cfr());
        PointSolver solver = new PointSolver(schematic, Optional.of(ratings), 20);
        Map<String, Found> found = new LinkedHashMap<>();
        List<Mode> bounded = new ArrayList<>();
        long assignments = 0;
        for (Mode mode : modes) {
            List<Condition> conditions = Live.conditions(schematic, mode);
            Cells cells = schematic.fitment().domain().split(conditions, most);
            if (!cells.complete()) {
                bounded.add(mode);
            }
            for (Cell cell : cells.list()) {
                cancel.check();
                assignments++;
                BitSet holding = new BitSet();
                cell.holding().forEach(each -> holding.set(places.get(conditions.get(each))));
                OperatingPoint point = solver.solve(cell.vehicles(), holding, mode,
                        org.loomwright.electric.point.Alteration.NONE);
                Fed fed = new Fed(point);
                for (Inspector inspector : inspectors) {
                    inspector.inspect(point, fed, ratings).forEach(each -> found.merge(each.key(), new Found(
                            each.with(owners(point, each.piece())), mode, cell.vehicles(), cell.vehicles()),
                            Found::and));
                }
            }
        }
        return new Survey(schematic, sorted(found), assignments, solver.solves(), bounded);
    }

    static List<Found> sorted(Map<String, Found> found) {
        return found.values().stream().sorted(Comparator.comparing((Found each) -> each.fault().rule())
                .thenComparing(each -> each.fault().piece().index())).toList();
    }

    /** The names of the drawings and harnesses on the way of the current of a piece. */
    static Set<String> owners(OperatingPoint point, Piece piece) {
        return Trail.of(point, piece).steps().stream().map(step -> step.piece().subject().owner())
                .collect(Collectors.toSet());
    }

    /** Returns what a rule finds. */
    public List<Found> of(String rule) {
        return found.stream().filter(each -> each.fault().rule().equals(rule)).toList();
    }
}
