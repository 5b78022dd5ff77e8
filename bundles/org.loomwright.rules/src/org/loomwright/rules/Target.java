// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/** What a rule looks at in one go. */
public sealed interface Target {

    /** Returns words for people, for progress and for what could not be followed to its end. */
    String words();

    /** Returns the id under which a waiver would name it. */
    String element();

    /** A circuit with its wires. */
    record OfCircuit(WiringView wiring, WiringView.CircuitView circuit, List<WireView> wires) implements Target {
        @Override
        public String words() {
            return "circuit " + circuit.circuit().name() + " of " + wiring.name();
        }

        @Override
        public String element() {
            return wiring.name() + ":" + circuit.circuit().name();
        }
    }

    /**
     * A connector with the wire ends in its cavities.
     *
     * @param parts catalogue parts by name, for terminals, seals and plugs
     */
    record OfHousing(WiringView wiring, ConnectorView connector, List<WireEnd> ends, Map<String, Part> parts)
            implements Target {
        @Override
        public String words() {
            return "connector " + connector.name() + " of " + wiring.name();
        }

        @Override
        public String element() {
            return wiring.name() + ":" + connector.name();
        }
    }

    /** A drawing or harness. */
    record OfHarness(WiringView wiring, Shapes shapes) implements Target {
        @Override
        public String words() {
            return (wiring.wiring().isHarness() ? "harness " : "drawing ") + wiring.name();
        }

        @Override
        public String element() {
            return wiring.name();
        }
    }

    /**
     * Everything that is connected with one choice of what is fitted in each position, in vehicles that have nothing in
     * common with the other targets of this choice. The network is built when a rule first asks for it.
     */
    final class OfNetwork implements Target {
        private final Wired wired;
        private final List<Wired> factory;
        private final Shapes shapes;

        OfNetwork(Wired wired, List<Wired> factory, Shapes shapes) {
            this.wired = wired;
            this.factory = List.copyOf(factory);
            this.shapes = shapes;
        }

        /** Returns the connections. */
        public Connections connections() {
            return wired.connections();
        }

        /**
         * Returns something that several rules ask of the connections; it is made once.
         *
         * @param type  what it is
         * @param maker makes it, of the connections alone
         */
        public <T> T derived(Class<T> type, Function<Connections, T> maker) {
            return wired.derived(type, maker);
        }

        /** With a harness of ours fitted: the connections as the factory made them, in the same vehicles and more. */
        public List<Connections> factory() {
            return factory.stream().map(Wired::connections).toList();
        }

        /**
         * Returns what is wrong with currents and voltages in any vehicle and mode, as far as a check goes.
         */
        public Circuits circuits(Cancel cancel) {
            return wired.circuits(parts(), cancel);
        }

        /** Returns the parts of all catalogues, by name. */
        public Map<String, Part> parts() {
            return shapes.checked().parts();
        }

        /** Returns the shapes of what is fitted. */
        public Shapes shapes() {
            return shapes;
        }

        @Override
        public String words() {
            return "connections " + wired.fitment().words();
        }

        @Override
        public String element() {
            return wired.fitment().platform().name();
        }
    }

    /** A platform with its drawings and harnesses. */
    record OfPlatform(PlatformView platform, List<WiringView> wirings) implements Target {
        @Override
        public String words() {
            return "platform " + platform.name();
        }

        @Override
        public String element() {
            return platform.name();
        }
    }

    /** A project as a whole. */
    record OfProject(Project project, Shapes shapes) implements Target {
        @Override
        public String words() {
            return "the project";
        }

        @Override
        public String element() {
            return "";
        }
    }
}
