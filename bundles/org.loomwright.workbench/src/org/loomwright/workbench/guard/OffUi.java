// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.guard;

import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.swt.widgets.Display;
import org.loomwright.compare.ProjectComparer;
import org.loomwright.fit.FitJudge;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.RuleEngine;

/**
 * Puts a guard before whatever takes long: each of its results throws {@link OnUiThread} when it is entered on the
 * thread that draws windows, before it does anything. The workbench has no other reader, linker or engine.
 */
public final class OffUi {

    private OffUi() {
    }

    /**
     * Passes on every thread but those that draw windows.
     *
     * @throws OnUiThread on one of those
     */
    public static void require(String what) {
        if (Display.findDisplay(Thread.currentThread()) != null) {
            throw new OnUiThread(what);
        }
    }

    /** A reader of sources behind the guard. */
    public static SourceReader reader(SourceReader reader) {
        return (file, bytes) -> {
            require("reading " + file);
            return reader.read(file, bytes);
        };
    }

    /** A judge of fit behind the guard. */
    public static FitJudge judge(FitJudge judge) {
        return (problem, cancel) -> {
            require("judging the fit");
            return judge.judge(problem, cancel);
        };
    }

    /** Rules behind the guard. */
    public static RuleEngine rules(RuleEngine rules) {
        return (project, settings, cancel, progress) -> {
            require("checking");
            return rules.check(project, settings, cancel, progress);
        };
    }

    /** A comparison behind the guard. */
    public static ProjectComparer comparer(ProjectComparer comparer) {
        return (old, now) -> {
            require("comparing");
            return comparer.compare(old, now);
        };
    }

    /** The question of a long computation whether to stop, asked of a monitor; not on a thread that draws. */
    public static Cancel cancel(IProgressMonitor monitor) {
        require("long work");
        return monitor::isCanceled;
    }

    /** Progress shown by a monitor. */
    public static Progress progress(IProgressMonitor monitor) {
        return (what, done, total) -> monitor.subTask(total > 0 ? what + " (" + done + " of " + total + ")" : what);
    }
}
