// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.harness.Span;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Occurrence;
import org.loomwright.ide.project.Moment;
import org.loomwright.workbench.view.ReferencesView;

/** References: lists every word of the project that names what the word at the cursor names. */
public final class ReferencesHandler extends EditorHandler {

    @Override
    void run(ITextEditor editor, Asking.Open open, ITextSelection selection) {
        IWorkbenchPage page = editor.getSite().getPage();
        work("Looking for references", () -> {
            List<ReferencesView.Row> rows = Asking.ask(open, (moment, file, cancel) -> rows(moment,
                    Services.references(moment, file, selection.getOffset(), cancel)), List.of());
            Display.getDefault().asyncExec(() -> {
                if (rows.isEmpty()) {
                    MessageDialog.openInformation(page.getWorkbenchWindow().getShell(), "References",
                            "There is no name here that something could refer to.");
                } else {
                    ReferencesView.show(page, open.file().getProject(), rows);
                }
            });
        });
    }

    private static List<ReferencesView.Row> rows(Moment moment, List<Occurrence> occurrences) {
        List<ReferencesView.Row> rows = new ArrayList<>();
        for (Occurrence each : occurrences) {
            Span span = each.span();
            String all = moment.text(span.file());
            int start = all.lastIndexOf('\n', span.offset() - 1) + 1;
            int end = all.indexOf('\n', span.offset());
            rows.add(new ReferencesView.Row(span, (int) all.substring(0, start).lines().count() + 1,
                    all.substring(span.offset(), span.end()), all.substring(start, end < 0 ? all.length() : end)
                            .strip(), each.declares()));
        }
        return rows;
    }
}
