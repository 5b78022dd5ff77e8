// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;

/** Gives controls that have no label of their own a name that a screen reader says. */
public final class Names {

    private Names() {
    }

    /** Gives a control this name. */
    public static AccessibleAdapter of(String name) {
        return new AccessibleAdapter() {

            @Override
            public void getName(AccessibleEvent event) {
                event.result = name;
            }
        };
    }
}
