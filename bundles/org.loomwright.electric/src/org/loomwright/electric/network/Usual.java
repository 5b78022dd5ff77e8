// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

/**
 * What a network takes where a catalogue is silent; the one place in which these figures stand. A catalogue states its
 * own: {@code resistance} on a terminal, fuse, switch or strap; {@code joins ... through} inside a part.
 */
public final class Usual {

    /** A crimped and mated contact in good order, in ohm (from memory; limits of 1.5 to 5 mohm in USCAR-2). */
    public static final double CONTACT = 0.002;
    /** A ring on a clean stud, in ohm (common practice). */
    public static final double BOLTED = 0.0005;
    /** A switch in good order, in ohm (common practice: below 0.3 V at its rated current). */
    public static final double SWITCH = 0.010;
    /** A strap between ground nodes, in ohm (common practice). */
    public static final double STRAP = 0.001;
    /** A bus bar or a trace inside a part, in ohm (common practice). */
    public static final double INSIDE = 0.001;
    /** The voltage in V that a fuse loses at its rated current (from memory: 80 to 130 mV for blade fuses). */
    public static final double FUSE_DROP = 0.1;
    /** A fuse without a rating, in ohm. */
    public static final double FUSE = 0.005;
    /** The heater of a thermal flasher, or the relay of an electronic one, in ohm (from memory). */
    public static final double FLASHER = 0.03;
    /** A battery that states no resistance, in ohm for 12 V (from memory). */
    public static final double BATTERY = 0.008;
    /** What an alternator gives at hot idle, as a share of its output (from memory). */
    public static final double ALTERNATOR_IDLE = 0.45;
    /** What a generator gives at idle: nothing, its cut-out is open (common practice). */
    public static final double GENERATOR_IDLE = 0;
    /** A solenoid of a cranking motor, in A at the supply's voltage (common practice). */
    public static final double SOLENOID = 15;
    /** The length in m of a wire whose length nobody states. */
    public static final double LENGTH = 1;
    /** The least length in m that is taken for one. */
    public static final double LEAST_LENGTH = 0.001;
    /** Regulated voltage of a 12 V machine that states none, in V (common practice). */
    public static final double REGULATED = 14.2;
    /** An LED or electronic load that states no range works down to this share of its voltage (from memory). */
    public static final double DROP_OUT = 0.6;

    /** The voltage in V of the 12 V supply that is assumed behind an open cavity, engine at rest (common practice). */
    public static final double ASSUMED_VOLTS = 12.6;
    /** Its resistance in ohm up to the cavity: a battery and some metres of cable (common practice). */
    public static final double ASSUMED_OHMS = 0.020;
    /** What the machine of that supply gives at most, in A, at {@link #REGULATED} (common practice). */
    public static final double ASSUMED_AMPS = 60;

    private Usual() {
    }
}
