// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import org.eclipse.core.runtime.Platform;
import org.loomwright.workbench.editor.UnsavedOffer;
import org.loomwright.workbench.focus.Focus;
import org.loomwright.workbench.preference.Preferences;
import org.loomwright.workbench.start.StartTrace;
import org.loomwright.workbench.truth.Rooms;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;

/** Offers what the parts of the workbench share as services of the framework, one of each. */
public final class Activator implements BundleActivator {

    private Rooms rooms;

    @Override
    public void start(BundleContext context) {
        rooms = new Rooms(Platform.getStateLocation(context.getBundle()).append("unsaved").toPath(),
                new UnsavedOffer());
        context.registerService(Rooms.class, rooms, null);
        Focus focus = new Focus();
        context.registerService(Focus.class, focus, null);
        context.registerService(StartTrace.class, new StartTrace(), null);
        Preferences.node().addPreferenceChangeListener(event -> focus.refresh());
    }

    @Override
    public void stop(BundleContext context) {
        rooms.close();
    }
}
