// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import org.loomwright.workbench.focus.Focus;
import org.loomwright.workbench.start.StartTrace;
import org.loomwright.workbench.truth.Rooms;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;

/** Finds what the parts of the workbench share. */
public final class Shared {

    /** Name of the bundle, and the beginning of all ids. */
    public static final String ID = "org.loomwright.workbench";

    private Shared() {
    }

    /** Returns the projects that are open. */
    public static Rooms rooms() {
        return service(Rooms.class);
    }

    /** Returns what the windows look at together. */
    public static Focus focus() {
        return service(Focus.class);
    }

    /** Returns who says when the first text is shown. */
    public static StartTrace start() {
        return service(StartTrace.class);
    }

    private static <T> T service(Class<T> type) {
        BundleContext context = FrameworkUtil.getBundle(Shared.class).getBundleContext();
        return context.getService(context.getServiceReference(type));
    }
}
