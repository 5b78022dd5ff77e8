// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import java.util.Optional;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.solve.Element;
import org.loomwright.quantity.ConductorSize;

/** What a piece comes to as an element of a network. */
public sealed interface Model {

    /**
     * Returns the element in a mode.
     *
     * @param celsius the temperature of a conductor
     * @return empty when nothing flows in that mode
     */
    Optional<Element> element(Mode mode, double celsius);

    /**
     * A copper conductor: rho20 / A x length x (1 + alpha (T - 20)).
     *
     * @param size    the conductor
     * @param metres  its length in m
     * @param assumed true when nobody states the length
     */
    record Copper(ConductorSize size, double metres, boolean assumed) implements Model {
        @Override
        public Optional<Element> element(Mode mode, double celsius) {
            return Optional.of(new Element.Resistor(metres * size.ohmPerMetre(celsius)));
        }
    }

    /** A fixed resistance in ohm: a contact, a fuse, a strap, a resistor cable. */
    record Fixed(double ohms) implements Model {
        @Override
        public Optional<Element> element(Mode mode, double celsius) {
            return Optional.of(new Element.Resistor(ohms));
        }
    }

    /**
     * A load.
     *
     * @param element what it does at a voltage
     * @param volts   its design voltage in V
     * @param amps    its current in A at that voltage
     * @param stall   its current in A when it cannot turn; 0 when it does not say
     */
    record Working(Element element, double volts, double amps, double stall) implements Model {
        @Override
        public Optional<Element> element(Mode mode, double celsius) {
            return Optional.of(element);
        }
    }

    /**
     * A battery, full or flat. A full one takes little charge, a flat one as much as there is.
     *
     * @param volts its voltage in V at rest when full
     * @param ohms  its inner resistance in ohm
     */
    record Accumulator(double volts, double ohms) implements Model {

        /** Voltage at rest of a flat battery as a share of a full one: 11.6 of 12.6 V (common practice). */
        public static final double FLAT = 11.6 / 12.6;
        /** A full battery takes this current in A at {@link #REGULATED} times its voltage at rest (from memory). */
        public static final double TRICKLE = 2.5;
        /** Regulated voltage over that of a full battery at rest: 14.2 over 12.6 V (common practice). */
        public static final double REGULATED = 14.2 / 12.6;

        @Override
        public Optional<Element> element(Mode mode, double celsius) {
            return Optional.of(mode.flat() ? new Element.Battery(volts * FLAT, ohms * 2, ohms * 2)
                    : new Element.Battery(volts, ohms, Math.max(ohms, volts * (REGULATED - 1) / TRICKLE)));
        }
    }

    /**
     * A generator or alternator with its regulator: gives nothing while the engine stands.
     *
     * @param volts what it holds, in V
     * @param amps  the most that it gives at cruise, in A
     * @param idle  the share of that which it gives at idle, hot
     */
    record Charging(double volts, double amps, double idle) implements Model {

        /** By how much a regulated voltage gives way, as a share of it at full output (from memory). */
        public static final double YIELD = 0.01;

        @Override
        public Optional<Element> element(Mode mode, double celsius) {
            double most = switch (mode.engine()) {
                case CRUISE -> amps;
                case IDLE, TURNING -> amps * idle;
                case STOPPED, CRANK -> 0;
            };
            return most <= 0 ? Optional.empty()
                    : Optional.of(new Element.Regulated(volts, most, volts * YIELD / amps));
        }
    }
}
