// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.List;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.thermal.Ratings;

/** Looks at one operating point for faults. Without state; one object serves every network. */
public interface Inspector {

    /**
     * Returns what is wrong at an operating point.
     *
     * @param point   the operating point
     * @param fed     what is joined to source and ground in it
     * @param ratings what its wires may carry
     */
    List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings);
}
