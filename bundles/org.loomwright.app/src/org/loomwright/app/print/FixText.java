// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import java.util.Map;
import org.loomwright.app.fix.Change;
import org.loomwright.app.fix.FixProject.Fixed;
import org.loomwright.app.fix.FixProject.Rewritten;
import org.loomwright.app.fix.UnifiedDiff;

/** What was mended, and what could be and was left to a person. */
public final class FixText {

    private FixText() {
    }

    /** A line for each change. */
    public static String changes(Fixed fixed) {
        StringBuilder out = new StringBuilder();
        lines("fixed", fixed.made(), fixed, out);
        lines("left to you", fixed.left(), fixed, out);
        return out.length() == 0 ? "" : out.append('\n').toString();
    }

    private static void lines(String head, List<Change> changes, Fixed fixed, StringBuilder out) {
        for (Change each : changes) {
            out.append(head).append(' ').append(Cells.printable(fixed.opened().place().prefix() + each.file() + ":"
                    + each.line() + " [" + each.rule() + "] " + each.what())).append('\n');
        }
    }

    /** One line: {@code orrin: 3 fixes made in 2 files, 1 left to you}. */
    public static String summary(Fixed fixed, boolean written) {
        int made = fixed.made().size();
        int left = fixed.left().size();
        return Cells.printable(fixed.opened().place().name()) + ": " + (made == 0 ? "nothing to fix" : made
                + (made == 1 ? " fix" : " fixes") + (written ? " made in " : " to make in ") + fixed.texts().size()
                + (fixed.texts().size() == 1 ? " file" : " files"))
                + (left == 0 ? "" : ", " + left + " left to you") + "\n";
    }

    /** What the files would be changed to, in the unified format. */
    public static String difference(Fixed fixed) {
        StringBuilder out = new StringBuilder();
        for (Map.Entry<String, Rewritten> each : fixed.texts().entrySet()) {
            out.append(UnifiedDiff.of(fixed.opened().place().prefix() + each.getKey(), each.getValue().oldText(),
                    each.getValue().newText()));
        }
        return out.toString();
    }
}
