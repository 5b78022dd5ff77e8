// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IPath;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.harness.Span;
import org.loomwright.stock.Stock;

/** Shows places of sources in editors. */
public final class Places {

    private Places() {
    }

    /** Opens the file of a place and selects it; what lies in no file of the project, or one that is gone, is left. */
    public static void open(IWorkbenchPage page, IProject project, Span span) {
        if (span.file().isEmpty() || span.file().startsWith(Stock.PREFIX)) {
            return;
        }
        IFile file = project.getFile(IPath.fromPortableString(span.file()));
        if (!file.exists()) {
            return;
        }
        try {
            IEditorPart editor = IDE.openEditor(page, file, true);
            if (editor instanceof ITextEditor text) {
                int length = text.getDocumentProvider().getDocument(text.getEditorInput()).getLength();
                int offset = Math.min(span.offset(), length);
                text.selectAndReveal(offset, Math.min(span.length(), length - offset));
            }
        } catch (PartInitException e) {
            ILog.get().error(file.getFullPath() + " cannot be opened", e);
        }
    }
}
