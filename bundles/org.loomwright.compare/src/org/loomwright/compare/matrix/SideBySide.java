// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.List;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/** Lays drawings side by side. Pure; safe for use by several threads. */
public interface SideBySide {

    /**
     * Makes the matrix of some drawings or harnesses, which may be of different platforms.
     *
     * @param name    what they have in common
     * @param project the project that they belong to
     * @param views   the drawings, in the order of the columns; at least one, none twice
     * @throws org.loomwright.quantity.Cancelled when asked to stop
     */
    Matrix lay(String name, Project project, List<WiringView> views, Cancel cancel);
}
