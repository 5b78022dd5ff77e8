// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.loomwright.ide.Shown;
import org.loomwright.quantity.Unit;

/** What the user has chosen, of the workspace. Safe for use by several threads. */
public final class Preferences {

    /** Name of the bundle that keeps them. */
    public static final String NODE = "org.loomwright.workbench";

    /** In which unit lengths are shown: {@code mm} or {@code in}. */
    public static final String UNIT = "unit";

    /** Whether what a wire may carry is also told by the second table. */
    public static final String SECOND_TABLE = "secondTable";

    /** How long nobody has to type before a check begins, in ms. */
    public static final String PAUSE = "pause";

    public static final int LEAST_PAUSE = 50;
    public static final int USUAL_PAUSE = 120;
    public static final int MOST_PAUSE = 10_000;

    private Preferences() {
    }

    /** Returns where they are kept. */
    public static IEclipsePreferences node() {
        return InstanceScope.INSTANCE.getNode(NODE);
    }

    /** Returns the unit in which lengths are shown. */
    public static Unit unit() {
        return node().get(UNIT, Unit.MM.symbol()).equals(Unit.IN.symbol()) ? Unit.IN : Unit.MM;
    }

    /** Returns how what is known is shown in the text. */
    public static Shown shown() {
        return new Shown(unit(), node().getBoolean(SECOND_TABLE, false));
    }

    /** Returns the pause before a check in ms, within its bounds whatever is kept. */
    public static int pause() {
        return Math.clamp(node().getInt(PAUSE, USUAL_PAUSE), LEAST_PAUSE, MOST_PAUSE);
    }
}
