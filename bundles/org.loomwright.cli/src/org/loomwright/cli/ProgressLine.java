// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.PrintStream;
import java.util.function.LongSupplier;
import org.loomwright.quantity.Progress;

/**
 * One line on the terminal that says how far a long computation is. Nothing is shown in the first second, at most five
 * times a second afterwards, and the line is gone at the end. Safe for use by several threads.
 */
final class ProgressLine implements Progress, AutoCloseable {

    private static final long QUIET = 1_000_000_000L;
    private static final long BETWEEN = 200_000_000L;
    private static final int MOST_COLUMNS = 60;
    private static final String CLEAR = "\r\u001b[K";

    private final PrintStream err;
    private final boolean shown;
    private final LongSupplier clock;
    private long next;
    private boolean dirty;

    /** Shows progress when complaints go to a terminal and the user did not ask for quiet. */
    ProgressLine(Door door, boolean quiet) {
        this(door.err(), door.errTerminal() && !quiet, System::nanoTime);
    }

    /**
     * @param clock nanoseconds since any moment
     */
    ProgressLine(PrintStream err, boolean shown, LongSupplier clock) {
        this.err = err;
        this.shown = shown;
        this.clock = clock;
        next = clock.getAsLong() + QUIET;
    }

    @Override
    public synchronized void report(String what, long done, long total) {
        long now = shown ? clock.getAsLong() : 0;
        if (!shown || now - next < 0) {
            return;
        }
        next = now + BETWEEN;
        dirty = true;
        String words = what.length() > MOST_COLUMNS ? what.substring(0, MOST_COLUMNS) + "..." : what;
        err.print(CLEAR + words + " (" + done + (total > 0 ? " of " + total : "") + ")");
        err.flush();
    }

    @Override
    public synchronized void close() {
        if (dirty) {
            err.print(CLEAR);
            err.flush();
            dirty = false;
        }
    }
}
