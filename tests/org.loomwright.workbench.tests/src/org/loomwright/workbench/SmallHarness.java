// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

/** The smallest project that has a harness without a fault: one wire between two connectors. */
final class SmallHarness {

    static final String TEXT = """
            platform p "P" {
                place d
                place q
            }
            catalogue k {
                cable c "Cable" {
                    size 1 mm2 diameter 2.1 mm
                }
            }
            harness one "One" of p {
                cable c
                datum d
                trunk main {
                    breakout x at 100 mm
                }
                branch b from x to q 200 mm
                connector J at d
                connector C on b
                circuit 1 RD {
                    wire a 1 mm2 from J:1 to C:1
                }
            }
            """;

    private SmallHarness() {
    }
}
