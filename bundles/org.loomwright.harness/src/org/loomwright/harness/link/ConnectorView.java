// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;

/**
 * A connector with its housing.
 *
 * @param owner     name of the drawing or harness that it belongs to
 * @param connector the snapshot
 * @param when      the vehicles that have it
 * @param housings  its housing, by vehicles
 * @param mates     what it plugs into, by vehicles
 */
public record ConnectorView(String owner, Connector connector, Condition when, List<Case<Part>> housings,
        List<Case<Mate>> mates) {

    /**
     * The other half of a connection.
     *
     * @param owner   name of the drawing, harness or platform that declares it
     * @param element the connector or device
     * @param device  true for a device
     */
    public record Mate(String owner, String element, boolean device) {
    }

    /** The connector's name. */
    public String name() {
        return connector.name().text();
    }

    /** The spot of one of its cavities. */
    public Node cavity(String cavity) {
        return new Node(Node.Kind.CAVITY, owner, name(), cavity);
    }
}
