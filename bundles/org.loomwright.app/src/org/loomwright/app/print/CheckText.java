// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.Tally;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;

/** The outcome of a check as text. */
public final class CheckText {

    private final Palette palette;

    public CheckText(Palette palette) {
        this.palette = palette;
    }

    /** The findings that are to be shown, in order. */
    public String findings(Opened opened, Report report, Shown shown) {
        StringBuilder out = new StringBuilder();
        FindingText text = new FindingText(opened.project().sources(), opened.place().prefix(), palette);
        for (Finding finding : report.findings()) {
            if (shown.shows(finding)) {
                text.append(finding, out);
            }
        }
        return out.toString();
    }

    /** One line: {@code orrin: 1 error, 2 warnings in 11 files (7 drawings, 1 harness, 1 kit)}. */
    public String summary(Opened opened, Report report) {
        Tally tally = Tally.of(report);
        Tone tone = report.worst().map(FindingText::tone).orElse(Tone.GOOD);
        Project project = opened.project();
        List<String> parts = new ArrayList<>();
        add(parts, project.drawings().size(), "drawing", "drawings");
        add(parts, project.harnesses().size(), "harness", "harnesses");
        add(parts, project.kits().size(), "kit", "kits");
        int files = project.sources().size();
        String what = parts.isEmpty() ? "" : " (" + String.join(", ", parts) + ")";
        String uncounted = tally.uncounted();
        return Cells.printable(opened.place().name()) + ": " + palette.paint(tone, tally.words()) + " in " + files
                + (files == 1 ? " file" : " files") + what + (uncounted.isEmpty() ? "" : "; " + uncounted) + "\n";
    }

    private static void add(List<String> parts, int count, String one, String several) {
        if (count > 0) {
            parts.add(count + " " + (count == 1 ? one : several));
        }
    }
}
