// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.ITextFileBufferManager;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.text.edits.MalformedTreeException;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;
import org.loomwright.harness.TextEdit;

/**
 * Changes texts: in the editor where a file is open, so that it can be undone there and is saved when the person says
 * so, else in the file at once. Either all files are changed or none. On the thread that draws.
 */
public final class Edits {

    private Edits() {
    }

    /** Applies edits of one or more files of a project; returns whether it was done. */
    public static boolean apply(IProject project, List<TextEdit> edits, String what) {
        Map<IFile, MultiTextEdit> changes = new LinkedHashMap<>();
        for (TextEdit edit : edits) {
            IFile file = project.getFile(IPath.fromPortableString(edit.span().file()));
            changes.computeIfAbsent(file, any -> new MultiTextEdit()).addChild(
                    new ReplaceEdit(edit.span().offset(), edit.span().length(), edit.text()));
        }
        ITextFileBufferManager manager = FileBuffers.getTextFileBufferManager();
        List<IFile> connected = new ArrayList<>();
        try {
            for (IFile file : changes.keySet()) {
                manager.connect(file.getFullPath(), LocationKind.IFILE, null);
                connected.add(file);
            }
            for (Map.Entry<IFile, MultiTextEdit> each : changes.entrySet()) {
                int end = each.getValue().getExclusiveEnd();
                if (end > buffer(manager, each.getKey()).getDocument().getLength()) {
                    throw new MalformedTreeException(null, null, "the text is no longer what the change was made for");
                }
            }
            for (Map.Entry<IFile, MultiTextEdit> each : changes.entrySet()) {
                ITextFileBuffer buffer = buffer(manager, each.getKey());
                boolean clean = !buffer.isDirty() && !buffer.isShared();
                IDocument document = buffer.getDocument();
                each.getValue().apply(document);
                if (clean) {
                    buffer.commit(null, true);
                }
            }
            return true;
        } catch (CoreException | BadLocationException | MalformedTreeException e) {
            ILog.get().warn(what + " was not done", e);
            return false;
        } finally {
            for (IFile file : connected) {
                try {
                    manager.disconnect(file.getFullPath(), LocationKind.IFILE, null);
                } catch (CoreException e) {
                    ILog.get().warn(file.getFullPath() + " cannot be let go", e);
                }
            }
        }
    }

    private static ITextFileBuffer buffer(ITextFileBufferManager manager, IFile file) {
        return manager.getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
    }
}
