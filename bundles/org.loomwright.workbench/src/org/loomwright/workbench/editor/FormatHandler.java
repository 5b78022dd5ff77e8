// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.Services;

/** Format: the lines of the selection, or the whole file. */
public final class FormatHandler extends EditorHandler {

    @Override
    void run(ITextEditor editor, Asking.Open open, ITextSelection selection) {
        work("Formatting " + open.file().getName(), () -> {
            List<TextEdit> edits = Asking.ask(open, (moment, file, cancel) -> selection.getLength() == 0
                    ? Services.format(moment, file) : Services.format(moment, file, selection.getOffset(),
                    selection.getOffset() + selection.getLength()), List.of());
            if (!edits.isEmpty()) {
                Display.getDefault().asyncExec(() ->
                        Edits.apply(open.file().getProject(), edits, "formatting " + open.file().getName()));
            }
        });
    }
}
