// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.fix.FixProject;
import org.loomwright.app.fix.FixProject.Fixed;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.FixText;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.standard.StandardRules;

/** {@code check --fix}: makes the changes that leave no doubt, and checks again. */
final class Fixing {

    private Fixing() {
    }

    /**
     * Mends all projects in memory before the first file is written.
     *
     * @param dry true to write nothing and print the difference
     * @return an {@link Exit} code: for what remains, or with {@code dry} for what there is
     */
    static int run(List<ProjectPlace> places, boolean dry, Flags flags, Language language, Door door)
            throws BadCall {
        if (flags.format() != Format.TEXT) {
            throw new BadCall("--fix prints text; call check again for another format");
        }
        List<Fixed> all = new ArrayList<>();
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            FixProject fix = new FixProject(language.reader(), StandardRules.engine(Desk.threads()), Desk.threads());
            for (ProjectPlace place : places) {
                all.add(fix.fix(place, flags.settings(), Cancel.NEVER, progress));
            }
        }
        print(all, dry, flags, door);
        boolean objects = !flags.never() && all.stream().map(each -> dry ? each.before() : each.report())
                .anyMatch(each -> each.objects(flags.failOn()));
        return objects ? Exit.FINDINGS : Exit.FINE;
    }

    private static void print(List<Fixed> all, boolean dry, Flags flags, Door door) throws BadCall {
        CheckText text = new CheckText(Desk.palette(door));
        for (Fixed each : all) {
            if (dry) {
                door.out().print(FixText.difference(each));
            } else {
                each.write();
                door.out().print(flags.quiet() ? "" : FixText.changes(each));
                door.out().print(text.findings(each.opened(), each.report(), flags.shown()));
            }
        }
        if (!flags.quiet()) {
            for (Fixed each : all) {
                door.out().print(FixText.summary(each, !dry));
                door.out().print(dry ? "" : text.summary(each.opened(), each.report()));
            }
        }
    }
}
