// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Measures both sides in one way and says what is different.
 *
 * <p>Postcondition: equal revisions give equal effects, and a revision that changes nothing gives none. May be called
 * from several threads.
 */
@FunctionalInterface
public interface Consequence {

    /**
     * Says what follows from a revision.
     *
     * @throws org.loomwright.quantity.Cancelled if it was cancelled
     */
    Effect of(Revision revision, Cancel cancel, Progress progress);
}
