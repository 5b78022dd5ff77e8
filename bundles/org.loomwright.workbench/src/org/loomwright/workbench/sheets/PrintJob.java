// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.sheets;

import java.nio.file.Path;
import java.time.LocalDate;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Display;
import org.loomwright.app.BadCall;
import org.loomwright.app.PrintSheets;
import org.loomwright.fit.ChainJudge;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.sheets.PrintedSheets;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.guard.OffUi;

/** Prints off the thread that draws, with progress and a button that cancels. */
public final class PrintJob extends Job {

    private static final int MOST_THREADS = 8;

    private final PrintRun run;
    private final Project project;
    private final Path root;
    private final SourceReader reader;
    private final boolean open;

    /**
     * @param project the sources, joined
     * @param root    the folder of the project
     * @param open    true to show the folder when it is there
     */
    public PrintJob(PrintRun run, Project project, Path root, SourceReader reader, boolean open) {
        super("Printing the sheets of " + run.name());
        this.run = run;
        this.project = project;
        this.root = root;
        this.reader = reader;
        this.open = open;
        setUser(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        int threads = Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());
        PrintSheets printer = new PrintSheets(OffUi.rules(new BookRuleEngine(StandardRules.book(), threads)),
                StandardRules.book().infos(), OffUi.judge(new ChainJudge()), new PrintedSheets(threads));
        try {
            PrintRun.Outcome outcome = run.run(project, root, printer, reader, Settings.on(LocalDate.now()),
                    OffUi.cancel(monitor), progress(monitor));
            tell(outcome);
            return new Status(outcome.errors() == 0 ? IStatus.OK : IStatus.WARNING, Shared.ID, outcome.words());
        } catch (Cancelled e) {
            return Status.CANCEL_STATUS;
        } catch (BadCall e) {
            return new Status(IStatus.ERROR, Shared.ID, e.getMessage());
        }
    }

    private void tell(PrintRun.Outcome outcome) {
        boolean written = outcome.files() > 0;
        String words = written ? outcome.words()
                : outcome.words() + " Mend what the findings say, or choose to print even with errors.";
        Display.getDefault().asyncExec(() -> {
            if (written && open) {
                Program.launch(root.resolve(run.folder()).toString());
            }
            MessageDialog.open(outcome.errors() == 0 ? MessageDialog.INFORMATION : MessageDialog.WARNING,
                    Display.getDefault().getActiveShell(), getName(), words, SWT.NONE);
        });
    }

    /** The words of what is done now, and a bar that fills by a share of what remains with each step. */
    private static Progress progress(IProgressMonitor monitor) {
        SubMonitor bar = SubMonitor.convert(monitor);
        Progress words = OffUi.progress(monitor);
        return (what, done, total) -> {
            synchronized (bar) {
                words.report(what, done, total);
                bar.setWorkRemaining(Math.toIntExact(Math.clamp(total - done, 2, 1_000_000))).worked(1);
            }
        };
    }
}
