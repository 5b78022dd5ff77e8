// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.WireView;

/** What makes a connection. */
public sealed interface Link {

    /**
     * A wire with one of its starts, ends and cables.
     *
     * @param from  its start
     * @param to    its end
     * @param cable its cable; empty where none is stated
     */
    record OfWire(WireView wire, WireEnd from, WireEnd to, Optional<Part> cable) implements Link {
    }

    /** Two cavities, or a cavity and a pin, that meet when two things are plugged together. */
    record Mated() implements Link {
    }

    /**
     * A connection inside a part.
     *
     * @param holder the device or connector that the part is
     * @param part   the part
     * @param join   the connection as the catalogue states it; empty for a part of two pins that states none
     */
    record Inside(Holder holder, Part part, Optional<Part.Join> join) implements Link {
    }

    /** A stud or a case that is bolted to a ground node. */
    record Bolted() implements Link {
    }

    /** A strap between two ground nodes. */
    record Strapped(Platform.Strap strap) implements Link {
    }

    /**
     * What holds a part.
     *
     * @param owner name of the platform, drawing or harness that declares it
     * @param name  its name
     * @param ours  true when a harness of ours declares it
     * @param when  the vehicles that have it
     */
    record Holder(String owner, Name name, boolean ours, Condition when) {
    }
}
