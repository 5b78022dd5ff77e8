// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Unit;

/**
 * Every figure that a project may set otherwise, with the default, what it rests on, and the bounds beyond which it
 * makes no sense. This is the one place in which they stand. What fuses carry, what wires bear and how far a run may be
 * unfused is not among them: no project lowers its guard against fire; a part's own figures belong in the catalogue.
 */
public enum Limit {
    SERVICE_LOOP("serviceLoop", "40", "0", "1000", Unit.MM, "spare length needed to plug in and re-terminate",
            "common practice"),
    MOVEMENT("movement", "0", "0", "1000", Unit.MM, "what a branch must follow besides, of an engine or a hinge",
            "common practice"),
    EXCESS("excessAtMost", "250", "0", "5000", Unit.MM, "the longest length that an installer may have to dress back",
            "common practice"),
    DOUBLING_BACK("doublingBackAtMost", "150", "0", "5000", Unit.MM, "how far a branch may run back along the trunk",
            "common practice"),
    SPACING("spacingAtLeast", "0", "0", "1000", Unit.MM, "least distance between two breakouts", "common practice"),
    BREAKOUTS_MADE("breakoutsMade", "5", "0", "100", Unit.MM,
            "how far a breakout may be made from its station, either way", "common practice"),
    CUTTING_GRID("cuttingGrid", "5", "0.1", "100", Unit.MM, "cut lengths are multiples of it", "common practice"),
    CUT_SHORTFALL("cutShortfall", "2", "0", "100", Unit.MM,
            "how much shorter than set the cutting machine may cut; added to each wire", "common practice"),
    HOUSING_ALLOWANCE("housingAllowance", "15", "0", "500", Unit.MM,
            "from the back of a housing to the wire's end in the terminal", "common practice"),
    SPLICE_ALLOWANCE("spliceAllowance", "10", "0", "500", Unit.MM, "what a wire needs beyond the middle of a splice",
            "common practice"),
    STUD_ALLOWANCE("studAllowance", "10", "0", "500", Unit.MM, "from a ground stud to the wire's end in the ring",
            "common practice"),
    DEVICE_ALLOWANCE("deviceAllowance", "15", "0", "500", Unit.MM,
            "from the end of a branch at an in-line device to the wire's end in its terminal", "common practice"),
    SPLICE_SPACING("spliceSpacing", "40", "0", "1000", Unit.MM, "least distance between two splices on one run",
            "common practice: a crimped splice under shrink is about 40 mm long"),
    SPLICE_CLEAR("spliceClear", "50", "0", "1000", Unit.MM,
            "least distance of a splice from an opening, a barrier or a stretch that flexes",
            "common practice: a splice is stiff and thick, and cracks where a bundle bends or is squeezed"),
    CLAMP_SPACING("clampSpacing", "610", "50", "2000", Unit.MM, "greatest distance between two supports of a run",
            "FAA AC 43.13-1B 11-96a: supports at most 24 in apart; 46 CFR 183.340(b)(4): 610 mm (24 in)"),
    BEND_RADIUS("bendRadius", "1000", "300", "3000", Unit.PERCENT,
            "least inner radius of a bend, as a share of the diameter of a wire over its insulation",
            "TM 1-1500-204-23-4: bend radius at least 10 times the outside diameter of the wire; FAA AC 43.13-1B the"
                    + " same for the thickest wire of a bundle, from memory"),
    LEGEND_PITCH("legendPitch", "2", "0.5", "20", Unit.MM,
            "length that one character of a print legend takes, with the gap behind it", "common practice"),
    LEGEND_HIDDEN("legendHidden", "15", "0", "200", Unit.MM,
            "length at each end of a wire that terminal, seal, housing or splice cover", "common practice"),
    GAUGE_MARGIN("gaugeMargin", "10", "0", "30", Unit.PERCENT,
            "by how much the section of a gauge size may be off against a range in mm2",
            "SAE sizes are 3 to 11 % under AWG of the same number, and ranges are rounded"),
    VOLTAGE_AT_LEAST("voltageAtLeast", "75", "50", "100", Unit.PERCENT,
            "least design voltage of a device, as a share of the supply's nominal voltage",
            "common practice: published lamps of a system lie between 1.0 and 1.25 times its nominal voltage"),
    VOLTAGE_AT_MOST("voltageAtMost", "135", "100", "200", Unit.PERCENT,
            "greatest design voltage of a device, as a share of the supply's nominal voltage",
            "common practice: published lamps of a system lie between 1.0 and 1.25 times its nominal voltage"),
    DROPPING_RESISTANCE("droppingResistance", "0.2", "0.01", "100", Unit.OHM,
            "least resistance that is taken for one that lowers the voltage of a device on purpose",
            "common practice: contacts and fuses are far below, ballasts far above"),
    LAMP_AT_LEAST("lampAtLeast", "85", "50", "100", Unit.PERCENT,
            "least voltage of a lamp while the engine runs, as a share of its design voltage",
            "Cal. Code Regs. title 13 s. 1249(c): at least 85 % of the design voltage at the socket"),
    LAMP_AT_MOST("lampAtMost", "115", "100", "150", Unit.PERCENT,
            "greatest voltage of a lamp, as a share of its design voltage",
            "common practice: a 12.8 V lamp at 14.2 V stands at 111 %"),
    HEADLAMP_DROP("headlampDropAtMost", "0.5", "0.05", "3", Unit.V,
            "what feed and return of a headlamp may lose together at 12 V; in proportion at other supplies",
            "common practice"),
    LOAD_DROP("dropAtMost", "10", "0.5", "50", Unit.PERCENT,
            "what a load other than a headlamp may lose on its way, as a share of the supply", "common practice"),
    SNEAK("sneakAtMost", "5", "0.1", "50", Unit.PERCENT,
            "what a load that is off may carry, as a share of its design current",
            "common practice: shared grounds always leak a little"),
    RETURNS("returnsAtLeast", "50", "1", "100", Unit.PERCENT,
            "what a load that returns through others must carry, as a share of its design current",
            "common practice"),
    DRAIN("drainAtMost", "50", "0", "5000", Unit.MA, "what may flow into one load with the key off",
            "common practice"),
    EXCITATION("excitationAtLeast", "100", "1", "5000", Unit.MA,
            "what an alternator wants through its charge lamp before it turns", "common practice");

    private final String word;
    private final Quantity usual;
    private final Quantity least;
    private final Quantity most;
    private final String meaning;
    private final String basis;

    Limit(String word, String usual, String least, String most, Unit unit, String meaning, String basis) {
        this.word = word;
        this.usual = new Quantity(usual, unit);
        this.least = new Quantity(least, unit);
        this.most = new Quantity(most, unit);
        this.meaning = meaning;
        this.basis = basis;
    }

    /** The limit of that name in the language. */
    public static Optional<Limit> of(String word) {
        return Arrays.stream(values()).filter(limit -> limit.word.equals(word)).findFirst();
    }

    /** All names in the language, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Limit::word).toList();
    }

    /** Its name in the language. */
    public String word() {
        return word;
    }

    /** What it is where nobody sets it. */
    public Quantity usual() {
        return usual;
    }

    /** The least that can be set. */
    public Quantity least() {
        return least;
    }

    /** The most that can be set. */
    public Quantity most() {
        return most;
    }

    /** What is measured. */
    public Dimension dimension() {
        return usual.unit().dimension();
    }

    /** What it limits, a few words. */
    public String meaning() {
        return meaning;
    }

    /** What the default rests on. */
    public String basis() {
        return basis;
    }

    /** Returns whether a quantity of its dimension lies within its bounds. */
    public boolean allows(Quantity value) {
        return value.si() >= least.si() && value.si() <= most.si();
    }
}
