// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Optional;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.harness.Span;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Rename;

/** Rename: gives what the word at the cursor names another name, in all files of the project. */
public final class RenameHandler extends EditorHandler {

    private static final String TITLE = "Rename";

    @Override
    void run(ITextEditor editor, Asking.Open open, ITextSelection selection) {
        Shell shell = editor.getSite().getShell();
        work("Looking for a name", () -> {
            Optional<String> name = Asking.ask(open, (moment, file, cancel) ->
                    Services.prepareRename(moment, file, selection.getOffset()).map(span ->
                            text(moment.text(file), span)), Optional.empty());
            Display.getDefault().asyncExec(() -> name.ifPresentOrElse(
                    word -> askName(shell, open, selection.getOffset(), word),
                    () -> MessageDialog.openInformation(shell, TITLE, "There is no name here that can be changed.")));
        });
    }

    private void askName(Shell shell, Asking.Open open, int offset, String word) {
        InputDialog dialog = new InputDialog(shell, TITLE, "New name, in all files of the project:", word,
                text -> text.isBlank() ? "A name is needed." : null);
        if (dialog.open() != Window.OK || dialog.getValue().strip().equals(word)) {
            return;
        }
        String to = dialog.getValue().strip();
        work("Renaming " + word, () -> {
            Rename.Renamed renamed = Asking.ask(open, (moment, file, cancel) -> Services.rename(moment, file, offset,
                    to, cancel), new Rename.Renamed(java.util.List.of(), "the text was changed meanwhile"));
            Display.getDefault().asyncExec(() -> {
                if (!renamed.refusal().isEmpty()) {
                    MessageDialog.openInformation(shell, TITLE, "Not renamed: " + renamed.refusal() + ".");
                } else if (!Edits.apply(open.file().getProject(), renamed.edits(), "renaming " + word)) {
                    MessageDialog.openInformation(shell, TITLE, "Not renamed: a file was changed meanwhile.");
                }
            });
        });
    }

    private static String text(String all, Span span) {
        return all.substring(span.offset(), span.end());
    }
}
