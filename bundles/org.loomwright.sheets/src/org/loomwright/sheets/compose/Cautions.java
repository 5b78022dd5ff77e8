// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.List;

/** The cautions that stand on every set; common practice of the trade. */
final class Cautions {

    static final List<String> ALWAYS = List.of(
            "Vehicle wiring can start fires and hurt people. Disconnect the battery's ground first and connect it"
                    + " last.",
            "Fuse every feed at its source. Support and protect every run; keep it clear of heat, edges and all that"
                    + " moves.",
            "Check every step against the vehicle in front of you: it may differ from the factory's drawings.",
            "Local codes, the vehicle maker's instructions and licensed practice come first. These sheets name the"
                    + " checks that were made and those that were not; they promise nothing beyond.");

    private Cautions() {
    }
}
