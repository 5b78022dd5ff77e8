// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.Survey.Found;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Cancel;

/**
 * The blocks of one mode, solved with bounds of what the others draw until these bounds hold; or the whole of it, where
 * that is less work.
 */
final class ModeSurvey {

    /** Bounds that still grow after so many rounds are given up: the mode is then bounded, and says so. */
    private static final int ROUNDS = 5;
    /** How many times more often a block is solved than a whole vehicle, about. */
    static final int FACTOR = 4;
    /** Growth of a current in A, and as a share of it, that counts as none. */
    private static final double SAME = 1e-3;

    private final Mode mode;
    private final Blocks cut;
    private final List<Unit> units = new ArrayList<>();
    private final Map<String, Found> found = new LinkedHashMap<>();
    private boolean complete = true;
    private boolean solved;

    /** Cuts a mode; nothing is solved yet. */
    ModeSurvey(Schematic schematic, Mode mode, List<Inspector> inspectors, int most, int factor) {
        this.mode = mode;
        List<Piece> live = Live.conducting(schematic, mode);
        Blocks blocks = Blocks.of(schematic, mode);
        Blocks uncut = new Blocks(live, List.of(), blocks.feeds(), blocks.grounds());
        List<Unit> parts = new ArrayList<>(List.of(new Unit(schematic, mode, blocks, List.of(), inspectors, most)));
        blocks.blocks().forEach(each -> parts.add(new Unit(schematic, mode, blocks, each, inspectors, most)));
        long work = parts.stream().mapToLong(Unit::work).sum() * factor;
        int worth = (int) Math.min(most, work / Math.max(1, live.size()) + 1); // more of the whole is more work
        Unit whole = new Unit(schematic, mode, uncut, List.of(), inspectors, worth);
        boolean apart = !whole.complete() || work < whole.work();
        cut = apart ? blocks : uncut;
        units.addAll(apart ? parts : List.of(whole));
        units.forEach(unit -> complete &= unit.complete());
    }

    /** Solves all of it. */
    ModeSurvey solve(Cancel cancel) {
        solved = true;
        for (Unit unit : units) {
            if (units.size() > 1) {
                unit.measure(cancel);
            }
        }
        boolean holds = false;
        for (int round = 0; round < ROUNDS && !holds; round++) {
            Map<Junction, Range> before = total(null);
            Set<WireView> beside = crowd();
            for (Unit unit : units) {
                unit.crowd(beside);
                Map<Junction, Range> others = total(unit);
                unit.bound(rest(others, true), rest(others, false), cancel);
            }
            holds = holds(before, total(null)) && beside.containsAll(crowd());
        }
        complete &= holds;
        for (Unit unit : units) {
            unit.inspect(cancel, found);
        }
        return this;
    }

    /** The wires of all units that carry enough to count as neighbours. */
    private Set<WireView> crowd() {
        Set<WireView> crowd = Collections.newSetFromMap(new IdentityHashMap<>());
        units.forEach(unit -> crowd.addAll(unit.carrying()));
        return crowd;
    }

    /** What all blocks but one draw at each stiff junction. */
    private Map<Junction, Range> total(Unit but) {
        Map<Junction, Range> total = new HashMap<>();
        for (Unit unit : units) {
            if (unit != but) {
                unit.draws().forEach((junction, range) -> total.merge(junction, range, Range::plus));
            }
        }
        return total;
    }

    /** What lowers the voltage that is left for a block most, or least. */
    private Map<Junction, Double> rest(Map<Junction, Range> others, boolean greatest) {
        Map<Junction, Double> rest = new HashMap<>();
        others.forEach((junction, range) -> rest.put(junction, cut.feeds().contains(junction) == greatest
                ? range.most() : range.least()));
        return rest;
    }

    private static boolean holds(Map<Junction, Range> before, Map<Junction, Range> after) {
        return after.entrySet().stream().allMatch(each -> before.get(each.getKey()).holds(each.getValue(), SAME));
    }

    Mode mode() {
        return mode;
    }

    Map<String, Found> found() {
        return found;
    }

    /** Returns whether it was solved. */
    boolean isSolved() {
        return solved;
    }

    /** Returns whether each block has all of its assignments. */
    boolean isWhole() {
        return complete;
    }

    /** Returns whether every assignment was solved, with bounds that hold. */
    boolean complete() {
        return solved && complete && units.stream().noneMatch(Unit::unsolved);
    }

    long assignments() {
        return units.stream().mapToLong(Unit::assignments).sum();
    }

    long solves() {
        return units.stream().mapToLong(Unit::solves).sum();
    }

    int blocks() {
        return cut.blocks().size();
    }
}
