// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.List;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.sheets.content.Order;

/** Makes the printed and exported documents of a kit or harness. */
@FunctionalInterface
public interface SheetEngine {

    /**
     * The files of a set, in the order in which a person looks for them; no two have one name, whatever a file system
     * thinks of capitals. Writes nothing.
     */
    List<SheetFile> make(Order order, SheetChoice choice, Cancel cancel, Progress progress);
}
