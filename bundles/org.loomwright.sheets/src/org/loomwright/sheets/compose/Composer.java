// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.List;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Document;

/** Composes each sort of document. Pure; each is linear in what it lists, but for conditions. */
public final class Composer {

    private Composer() {
    }

    /** The cover sheet of a set; {@code documents} are the names of the others. */
    public static Document cover(Order order, List<String> documents) {
        return CoverSheet.of(order, documents);
    }

    /** The wire list of a harness. */
    public static Document wireList(LaidHarness harness) {
        return WireListSheet.of(harness);
    }
}
