// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.guide;

import java.util.Comparator;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.editor.Asking;
import org.loomwright.workbench.project.FindingMarkers;

/**
 * Opens the guide: at the page about the rule of the chosen finding, or of one in the line of the cursor; else at its
 * first page.
 */
public final class GuideHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        String page = rule(event).map(rule -> "rules/" + rule + ".html").orElse("");
        try {
            GuideView view = (GuideView) HandlerUtil.getActiveWorkbenchWindow(event).getActivePage()
                    .showView(GuideView.ID);
            view.choose(page);
        } catch (PartInitException e) {
            ILog.get().error("the guide cannot be shown", e);
        }
        return null;
    }

    private static Optional<String> rule(ExecutionEvent event) {
        IWorkbenchPart part = HandlerUtil.getActivePart(event);
        if (part instanceof ITextEditor editor && editor.getSelectionProvider().getSelection()
                instanceof ITextSelection selection) {
            return rule(editor.getDocumentProvider().getDocument(editor.getEditorInput()), selection);
        }
        ISelection chosen = HandlerUtil.getCurrentSelection(event);
        Object first = chosen instanceof IStructuredSelection all ? all.getFirstElement() : null;
        if (first instanceof Finding finding) {
            return Optional.of(finding.rule());
        }
        return Optional.ofNullable(Adapters.adapt(first, IMarker.class))
                .map(marker -> marker.getAttribute(FindingMarkers.RULE, null));
    }

    /** The rule of the smallest finding at the cursor, else of the first in its line. */
    private static Optional<String> rule(IDocument document, ITextSelection at) {
        int line = at.getStartLine() + 1;
        return Asking.of(document).flatMap(open -> Asking.last(open, document).flatMap(moment ->
                moment.findings(open.name()).stream().filter(each -> each.place().span().line() == line)
                        .min(Comparator.comparing((Finding each) -> !around(each.place().span(), at.getOffset()))
                                .thenComparing(each -> !each.counts())
                                .thenComparing(each -> each.place().span().length())).map(Finding::rule)));
    }

    private static boolean around(Span span, int offset) {
        return span.offset() <= offset && offset <= span.end();
    }
}
