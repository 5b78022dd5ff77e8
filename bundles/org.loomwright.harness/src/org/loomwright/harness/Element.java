// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

/** A top-level element of a source file. */
public sealed interface Element permits Platform, Catalogue, Wiring, Kit, Waiver, Practice {

    /** The name by which other files know it; {@link Name#NONE} for one that cannot be named. */
    Name name();

    /** The whole element. */
    Span span();
}
