// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;

/**
 * A drawing or harness with what its names mean. All conditions are within {@link #when}.
 *
 * @param wiring     the snapshot
 * @param platform   its platform
 * @param when       the vehicles that it is for; for a harness of ours also within those of the drawings it covers
 * @param connectors by name, in source order
 * @param splices    by name, in source order
 * @param studs      by name, in source order
 * @param devices    in-line devices by name, in source order
 * @param circuits   the vehicles that have each circuit, in source order; two circuits of one name are two entries
 * @param wires      all wires in source order
 * @param covers     names of the drawings that it covers and that exist
 */
public record WiringView(Wiring wiring, PlatformView platform, Condition when, Map<String, ConnectorView> connectors,
        Map<String, SpliceView> splices, Map<String, StudView> studs, Map<String, DeviceView> devices,
        List<CircuitView> circuits, List<WireView> wires, List<String> covers) {

    /** A circuit and the vehicles that have it. */
    public record CircuitView(Circuit circuit, Condition when) {
    }

    /** A splice, the circuit that it belongs to, and the vehicles that have it. */
    public record SpliceView(String owner, Circuit circuit, Circuit.Splice splice, Condition when) {

        /** The spot of the splice. */
        public Node node() {
            return new Node(Node.Kind.SPLICE, owner, splice.name().text(), "");
        }
    }

    /** A ground stud and the vehicles that have it. */
    public record StudView(String owner, Wiring.Stud stud, Condition when) {

        /** The spot of the stud. */
        public Node node() {
            return new Node(Node.Kind.STUD, owner, stud.name().text(), "");
        }
    }

    /** The drawing's or harness's name. */
    public String name() {
        return wiring.name().text();
    }

    /** The trunk or branch of that name. */
    public Optional<Run> run(String name) {
        for (Run run : wiring.runs()) {
            if (run.name().text().equals(name)) {
                return Optional.of(run);
            }
        }
        return Optional.empty();
    }
}
