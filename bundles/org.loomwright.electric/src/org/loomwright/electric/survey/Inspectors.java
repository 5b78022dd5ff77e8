// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.List;

/** All inspectors. */
public final class Inspectors {

    private Inspectors() {
    }

    /** Returns all of them, in order. */
    public static List<Inspector> all() {
        return List.of(new LoadFaults(), new ConductorFaults(), new ReturnFaults(), new ShortFaults(),
                new SeriesFaults(), new StartFaults(), new ExcitationFaults(), new OpenedFaults(),
                new UnknownFaults());
    }
}
