// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;

/** A command about the text of the active editor, when that is one of our sources. */
abstract class EditorHandler extends AbstractHandler {

    /** Does it; on the thread that draws, so it hands what takes long to {@link #work}. */
    abstract void run(ITextEditor editor, Asking.Open open, ITextSelection selection);

    /** Works something out off the thread that draws. */
    final void work(String what, Runnable task) {
        Job job = Job.create(what, monitor -> {
            task.run();
        });
        job.setPriority(Job.INTERACTIVE);
        job.schedule();
    }

    @Override
    public final Object execute(ExecutionEvent event) {
        IEditorPart part = HandlerUtil.getActiveEditor(event);
        if (part instanceof ITextEditor editor && editor.getSelectionProvider().getSelection()
                instanceof ITextSelection selection) {
            Optional<Asking.Open> open = Asking.of(editor.getDocumentProvider().getDocument(editor.getEditorInput()));
            open.ifPresent(each -> run(editor, each, selection));
        }
        return null;
    }
}
