// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/**
 * Something that is asked about a file.
 *
 * @param <T> what the answer is
 */
@FunctionalInterface
public interface Question<T> {

    /**
     * Answers it.
     *
     * @param moment the project of the file, now
     * @param file   the file's name in the project
     * @param cancel to be asked while it takes long
     */
    T answer(Moment moment, String file, Cancel cancel);
}
