// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import java.io.ByteArrayInputStream;
import java.lang.reflect.InvocationTargetException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.undo.CreateFileOperation;
import org.eclipse.ui.ide.undo.WorkspaceUndoUtil;
import org.loomwright.harness.Practice;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.act.Judging;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.editor.Edits;

/** Writes into the sources of a project how it judges. On the thread that draws; what takes time is done beside it. */
final class JudgementWriter {

    private static final String GONE = "The practice was changed meanwhile, or cannot be read to its end.";
    private static final String REFUSED = "The practice could not be written; the error log says why.";

    private final IProject project;
    private final Shell shell;

    JudgementWriter(IProject project, Shell shell) {
        this.project = project;
        this.shell = shell;
    }

    /** Writes what is wished; returns why it was not. */
    Optional<String> write(Judgement judgement) {
        Optional<Practice> practice = judgement.practice();
        if (practice.isEmpty()) {
            return create(Judging.file(Judgement.NEW, judgement.wishes()));
        }
        Optional<List<TextEdit>> edits = edits(practice.get(), judgement.wishes());
        if (edits.isEmpty()) {
            return Optional.of(GONE);
        }
        return edits.get().isEmpty() || Edits.apply(project, edits.get(), "How the project judges") ? Optional.empty()
                : Optional.of(REFUSED);
    }

    private Optional<List<TextEdit>> edits(Practice practice, List<Judging.Wish> wishes) {
        AtomicReference<Optional<List<TextEdit>>> edits = new AtomicReference<>(Optional.empty());
        try {
            PlatformUI.getWorkbench().getProgressService().busyCursorWhile(monitor -> edits.set(Shared.rooms()
                    .room(project).flatMap(room -> Judging.edits(room.moment(), practice, wishes))));
        } catch (InterruptedException e) {
            return Optional.empty();
        } catch (InvocationTargetException e) {
            ILog.get().error("how " + project.getName() + " judges could not be worked out", e.getCause());
        }
        return edits.get();
    }

    private Optional<String> create(String text) {
        IFile file = project.getFile(Judgement.NEW + ".loom");
        if (file.exists()) {
            return Optional.of("There is a file " + file.getName()
                    + " that holds no practice. Write one into it first.");
        }
        try {
            new CreateFileOperation(file, null, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                    "New practice").execute(new NullProgressMonitor(), WorkspaceUndoUtil.getUIInfoAdapter(shell));
            return Optional.empty();
        } catch (ExecutionException e) {
            ILog.get().error("the practice of " + project.getName() + " was not written", e);
            return Optional.of(REFUSED);
        }
    }
}
