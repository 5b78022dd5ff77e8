// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import org.eclipse.core.runtime.IAdapterFactory;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.views.contentoutline.IContentOutlinePage;

/** Gives the platform's text editor an outline for our sources. */
public final class OutlineAdapter implements IAdapterFactory {

    @Override
    public <T> T getAdapter(Object object, Class<T> type) {
        if (type != IContentOutlinePage.class || !(object instanceof ITextEditor editor)
                || editor.getDocumentProvider() == null
                || editor.getDocumentProvider().getDocument(editor.getEditorInput()) == null) {
            return null;
        }
        return Asking.of(editor.getDocumentProvider().getDocument(editor.getEditorInput()))
                .map(open -> type.cast(new LoomOutline(editor, open))).orElse(null);
    }

    @Override
    public Class<?>[] getAdapterList() {
        return new Class<?>[] {IContentOutlinePage.class};
    }
}
