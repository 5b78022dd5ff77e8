// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Map;

/**
 * Everything around one call that is not an argument.
 *
 * @param out         where results go
 * @param err         where complaints and progress go
 * @param folder      the folder that relative paths start from
 * @param environment environment variables
 * @param outTerminal true when results go to a terminal
 * @param errTerminal true when complaints go to a terminal
 */
record Door(PrintStream out, PrintStream err, Path folder, Map<String, String> environment, boolean outTerminal,
        boolean errTerminal) {

    private static final int WIDTH = 120;
    private static final int LEAST_WIDTH = 60;

    /** True when results may carry colours: on a terminal that has them, unless the user wants none (no-color.org). */
    boolean colours() {
        return outTerminal && environment.getOrDefault("NO_COLOR", "").isEmpty()
                && !environment.getOrDefault("TERM", "").equals("dumb");
    }

    /** Columns that a table may take; the same for every file and pipe. */
    int width() {
        if (!outTerminal) {
            return WIDTH;
        }
        try {
            return Math.max(LEAST_WIDTH, Integer.parseInt(environment.getOrDefault("COLUMNS", "")));
        } catch (NumberFormatException e) {
            return WIDTH;
        }
    }
}
