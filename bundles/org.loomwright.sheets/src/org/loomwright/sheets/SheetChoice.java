// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.loomwright.sheets.page.Paper;

/**
 * Which documents are made, and on what.
 *
 * @param kinds the documents
 * @param paper the paper
 * @param stamp what stands across every page; empty for nothing
 * @param board the formboard that there is
 */
public record SheetChoice(Set<SheetKind> kinds, Paper paper, Optional<String> stamp, Size board) {

    /** A common sheet of plywood, 8 ft x 4 ft. */
    public static final Size USUAL_BOARD = new Size(2440, 1220);

    /** Width and height in mm. */
    public record Size(double width, double height) {
    }

    public SheetChoice {
        kinds = Set.copyOf(kinds);
    }

    /** All documents on some paper, without a stamp. */
    public static SheetChoice all(Paper paper) {
        return new SheetChoice(EnumSet.allOf(SheetKind.class), paper, Optional.empty(), USUAL_BOARD);
    }

    /** Some documents on some paper, without a stamp. */
    public static SheetChoice of(Paper paper, SheetKind first, SheetKind... others) {
        return new SheetChoice(EnumSet.of(first, others), paper, Optional.empty(), USUAL_BOARD);
    }
}
