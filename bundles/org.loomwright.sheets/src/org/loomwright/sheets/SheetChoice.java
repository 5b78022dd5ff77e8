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
 */
public record SheetChoice(Set<SheetKind> kinds, Paper paper, Optional<String> stamp) {

    public SheetChoice {
        kinds = Set.copyOf(kinds);
    }

    /** All documents on some paper, without a stamp. */
    public static SheetChoice all(Paper paper) {
        return new SheetChoice(EnumSet.allOf(SheetKind.class), paper, Optional.empty());
    }
}
