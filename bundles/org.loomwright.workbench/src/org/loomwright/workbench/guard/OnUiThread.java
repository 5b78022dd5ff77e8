// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.guard;

/** Thrown when long work is about to start on the thread that draws windows: a fault of ours, never of the user. */
public final class OnUiThread extends IllegalStateException {

    private static final long serialVersionUID = 1;

    OnUiThread(String what) {
        super(what + " must not run on the thread that draws windows");
    }
}
