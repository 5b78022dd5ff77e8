// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.JudgeFit;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.print.Palette;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** What every command that reads sources begins with. */
final class Desk {

    private Desk() {
    }

    /** Opens the projects that the arguments name. */
    static List<Opened> open(Language language, Door door, List<String> paths, Progress progress) throws BadCall {
        List<ProjectPlace> places = ProjectPlace.find(door.folder(), paths);
        OpenProject open = new OpenProject(language.reader(), threads());
        List<Opened> opened = new ArrayList<>();
        for (ProjectPlace place : places) {
            opened.add(open.open(place, Cancel.NEVER, progress));
        }
        return opened;
    }

    /** How many threads to read and check with. */
    static int threads() {
        return Runtime.getRuntime().availableProcessors();
    }

    /** The judge of fits, with the usual settings for what a harness does not state. */
    static JudgeFit fit() {
        return new JudgeFit(new ChainJudge(), FitDefaults.usual());
    }

    /** Colours when the door has them. */
    static Palette palette(Door door) {
        return new Palette(door.colours());
    }
}
