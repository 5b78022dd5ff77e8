// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeSold;
import org.loomwright.app.JudgeSold.Judged;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.print.CompareJson;
import org.loomwright.app.print.CompareText;
import org.loomwright.app.revision.GitArchive;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.consequence.InterfaceConsequence;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.harness.Kit;
import org.loomwright.quantity.Cancel;

/** {@code compare --sold PROJECT}: holds a project against every revision of its kits that has been sold. */
final class HoldSold {

    private HoldSold() {
    }

    static int run(String path, boolean all, Flags flags, Language language, Door door) throws BadCall {
        if (flags.format() == Format.HTML) {
            throw new BadCall("--sold PROJECT prints text or json; a page holds one comparison:"
                    + " compare --sold OLD NEW");
        }
        List<Judged> judged;
        String name;
        try (ProgressLine progress = new ProgressLine(door, flags.quiet())) {
            OpenProject open = new OpenProject(language.reader(), Desk.threads());
            ProjectPlace place = ProjectPlace.findOne(door.folder(), path);
            Opened now = open.open(place, Cancel.NEVER, progress);
            name = place.name();
            for (Kit kit : now.project().kits().values()) {
                for (Kit.Sold sold : kit.sold()) {
                    if (sold.at().isEmpty()) {
                        throw new BadCall("kit " + kit.name().text() + " does not say where its sold revision \""
                                + sold.revision() + "\" is kept; write: sold revision \"" + sold.revision()
                                + "\" at \"NAME\", with what git calls it");
                    }
                }
            }
            judged = new JudgeSold(new FactComparer(),
                    new InterfaceConsequence(new ChainJudge(), FitDefaults.usual(), true))
                    .judge(now, new GitArchive(open, door.folder(), place), Cancel.NEVER, progress);
        }
        if (flags.json()) {
            door.out().print(CompareJson.of(judged, flags.failOn()));
        } else {
            CompareText text = new CompareText(Desk.palette(door), door.width(), all);
            judged.forEach(each -> door.out().print(text.sold(each)));
            if (judged.isEmpty()) {
                door.out().print(name + ": no kit lists a sold revision\n");
            }
        }
        return judged.stream().anyMatch(each -> each.compared().objects(flags.failOn())) ? Exit.FINDINGS : Exit.FINE;
    }
}
