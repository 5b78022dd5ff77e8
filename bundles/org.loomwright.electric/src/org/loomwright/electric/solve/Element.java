// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

/**
 * What lies between two nodes: a current in A for each voltage in V, both counted from the first node to the second.
 * Every current is a continuous function of the voltage; {@link #slope} is its derivative, from one side where there is
 * a kink.
 */
public sealed interface Element {

    /** Returns the current in A at a voltage in V. */
    double current(double volts);

    /** Returns the derivative of the current in A/V at a voltage in V. */
    double slope(double volts);

    /** Puts the current in A at a voltage in V, and its derivative in A/V, at one place of two arrays. */
    default void evaluate(double volts, double[] currents, double[] slopes, int at) {
        currents[at] = current(volts);
        slopes[at] = slope(volts);
    }

    /** Returns the voltage in V around which a search begins. */
    double start();

    /** A conductor. Its resistance in ohm is positive; nothing has none. */
    record Resistor(double ohms) implements Element {

        public Resistor {
            require(ohms > 0 && ohms < Double.POSITIVE_INFINITY, "a resistance is positive, not " + ohms);
        }

        @Override
        public double current(double volts) {
            return volts / ohms;
        }

        @Override
        public double slope(double volts) {
            return 1 / ohms;
        }

        @Override
        public double start() {
            return 0;
        }
    }

    /** A source of so many V behind so many ohm, which also takes current back: a battery. The first node is plus. */
    record Cell(double volts, double ohms) implements Element {

        public Cell {
            require(ohms > 0 && ohms < Double.POSITIVE_INFINITY, "an internal resistance is positive, not " + ohms);
        }

        @Override
        public double current(double across) {
            return (across - volts) / ohms;
        }

        @Override
        public double slope(double across) {
            return 1 / ohms;
        }

        @Override
        public double start() {
            return volts;
        }
    }

    /**
     * A battery: a source that gives current by one resistance and takes it back by another. The first node is plus.
     *
     * @param volts  its voltage at rest, in V
     * @param ohms   its inner resistance while it gives current, in ohm
     * @param charge the same while it is charged
     */
    record Battery(double volts, double ohms, double charge) implements Element {

        public Battery {
            require(ohms > 0 && charge > 0, "a battery has an inner resistance");
        }

        @Override
        public double current(double across) {
            return (across - volts) / (across > volts ? charge : ohms);
        }

        @Override
        public double slope(double across) {
            return 1 / (across > volts ? charge : ohms);
        }

        @Override
        public double start() {
            return volts;
        }
    }

    /**
     * A source that holds a voltage up to a greatest current and takes none back: an alternator with its regulator, a
     * generator behind its cut-out. The first node is plus; current flows out of it.
     *
     * @param volts what it holds without load, in V
     * @param amps  the most that it gives, in A
     * @param ohms  by how much its voltage gives way, in ohm
     */
    record Regulated(double volts, double amps, double ohms) implements Element {

        public Regulated {
            require(ohms > 0 && amps > 0, "a regulated source has a greatest current and gives way a little");
        }

        @Override
        public double current(double across) {
            return -Math.min(Math.max((volts - across) / ohms, 0), amps);
        }

        @Override
        public double slope(double across) {
            double wanted = (volts - across) / ohms;
            return wanted > 0 && wanted < amps ? 1 / ohms : OneWay.LEAK;
        }

        @Override
        public double start() {
            return volts - amps * ohms / 2;
        }
    }

    /**
     * A filament: I = I0 sgn(v) min(12 |v|, |v|^0.55), v = V / V0. The exponent is that of lamp re-rating in Fink and
     * Beaty, Standard Handbook for Electrical Engineers, 11th ed., p. 22-8; the 12, the ratio of hot to cold
     * resistance, is from memory and only matters below 0.4 % of the design voltage.
     *
     * @param volts design voltage in V
     * @param amps  current in A at the design voltage
     */
    record Filament(double volts, double amps) implements Element {

        /** Current grows with this power of the voltage. */
        public static final double EXPONENT = 0.55;
        /** A cold filament conducts so many times as well as a hot one. */
        public static final double COLD = 12;

        public Filament {
            require(volts > 0 && amps > 0, "a lamp has a design voltage and a current");
        }

        @Override
        public double current(double across) {
            double share = Math.abs(across) / volts;
            return amps * Math.signum(across) * Math.min(COLD * share, Math.pow(share, EXPONENT));
        }

        @Override
        public double slope(double across) {
            double share = Math.abs(across) / volts;
            return slope(share, Math.pow(share, EXPONENT));
        }

        private double slope(double share, double hot) {
            return COLD * share <= hot ? amps / volts * COLD : amps / volts * EXPONENT * hot / share;
        }

        @Override
        public void evaluate(double across, double[] currents, double[] slopes, int at) {
            double share = Math.abs(across) / volts;
            double hot = Math.pow(share, EXPONENT);
            currents[at] = amps * Math.signum(across) * Math.min(COLD * share, hot);
            slopes[at] = slope(share, hot);
        }

        @Override
        public double start() {
            return volts;
        }
    }

    /**
     * A load that takes one power, or one current, at any voltage from its drop-out voltage on; below, it takes the
     * less the lower the voltage, and next to nothing backwards. LED lamps, electronics.
     *
     * @param watts   power in W; with {@code steady}, the current in A instead
     * @param dropOut where it stops working, in V
     * @param steady  true when it is the current that does not depend on the voltage
     */
    record Electronic(double watts, double dropOut, boolean steady) implements Element {

        public Electronic {
            require(watts > 0 && dropOut > 0, "a load has a power or a current, and a drop-out voltage");
        }

        @Override
        public double current(double across) {
            if (across >= dropOut) {
                return steady ? watts : watts / across;
            }
            return across <= 0 ? OneWay.LEAK * across : watts / (steady ? 1 : dropOut) * across / dropOut;
        }

        @Override
        public double slope(double across) {
            if (across >= dropOut) {
                return steady ? 0 : -watts / (across * across);
            }
            return across <= 0 ? OneWay.LEAK : watts / (steady ? 1 : dropOut) / dropOut;
        }

        @Override
        public double start() {
            return dropOut;
        }
    }

    /** A current in A from the first node to the second, whatever the voltage: what the rest of a network draws. */
    record Draw(double amps) implements Element {

        @Override
        public double current(double volts) {
            return amps;
        }

        @Override
        public double slope(double volts) {
            return 0;
        }

        @Override
        public double start() {
            return 0;
        }
    }

    /**
     * Lets current pass from the first node to the second only, and loses some V on the way.
     *
     * @param volts forward voltage in V
     * @param ohms  resistance in ohm beyond it
     */
    record OneWay(double volts, double ohms) implements Element {

        /** What it conducts backwards, in A/V. */
        public static final double LEAK = 1e-9;

        public OneWay {
            require(ohms > 0 && volts >= 0, "a diode has a forward voltage and a resistance");
        }

        @Override
        public double current(double across) {
            return across > volts ? (across - volts) / ohms : LEAK * (across - volts);
        }

        @Override
        public double slope(double across) {
            return across > volts ? 1 / ohms : LEAK;
        }

        @Override
        public double start() {
            return volts;
        }
    }

    private static void require(boolean holds, String message) {
        if (!holds) {
            throw new IllegalArgumentException(message);
        }
    }
}
