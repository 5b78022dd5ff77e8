// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.SelectionChangedEvent;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.views.contentoutline.ContentOutlinePage;
import org.loomwright.ide.Services;
import org.loomwright.ide.outline.OutlineItem;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/** The outline of a source: what is in what; choosing something selects its name. */
public final class LoomOutline extends ContentOutlinePage {

    /** The most items below one that are shown at once; a last line shows more. A tree of all would hold the window. */
    private static final int AT_ONCE = 500;

    private final ITextEditor editor;
    private final Asking.Open open;
    private final Rooms.Listener listener = this::told;
    private final Job job = Job.createSystem("Outline", monitor -> {
        refresh();
    });

    LoomOutline(ITextEditor editor, Asking.Open open) {
        this.editor = editor;
        this.open = open;
    }

    @Override
    public void createControl(Composite parent) {
        super.createControl(parent);
        TreeViewer tree = getTreeViewer();
        tree.setDisplayIncrementally(AT_ONCE);
        tree.setContentProvider(new Content());
        tree.setLabelProvider(new LabelProvider() {

            @Override
            public String getText(Object element) {
                OutlineItem item = (OutlineItem) element;
                return item.sort() + " " + item.label()
                        + (item.detail().isEmpty() ? "" : "  " + item.detail());
            }
        });
        Shared.rooms().add(listener);
        job.schedule();
    }

    @Override
    public void dispose() {
        Shared.rooms().remove(listener);
        job.cancel();
        super.dispose();
    }

    @Override
    public void selectionChanged(SelectionChangedEvent event) {
        super.selectionChanged(event);
        if (event.getStructuredSelection().getFirstElement() instanceof OutlineItem item
                && getTreeViewer().getControl().isFocusControl()) {
            IDocument document = editor.getDocumentProvider().getDocument(editor.getEditorInput());
            if (item.name().end() <= document.getLength()) {
                editor.selectAndReveal(item.name().offset(), item.name().length());
            }
        }
    }

    private void told(IProject project, Truth truth) {
        if (project.equals(open.file().getProject())) {
            job.schedule();
        }
    }

    private void refresh() {
        List<OutlineItem> items = Asking.ask(open, (moment, file, cancel) -> Services.outline(moment, file), null);
        if (items == null) {
            return;
        }
        Display.getDefault().asyncExec(() -> {
            TreeViewer tree = getTreeViewer();
            if (tree != null && !tree.getControl().isDisposed() && !items.equals(tree.getInput())) {
                boolean first = tree.getInput() == null;
                Object[] expanded = tree.getExpandedElements();
                tree.setInput(items);
                if (first) {
                    tree.expandToLevel(2);
                } else {
                    tree.setExpandedElements(expanded);
                }
            }
        });
    }

    private static final class Content implements ITreeContentProvider {

        @Override
        public Object[] getElements(Object input) {
            return ((List<?>) input).toArray();
        }

        @Override
        public Object[] getChildren(Object parent) {
            return ((OutlineItem) parent).children().toArray();
        }

        @Override
        public Object getParent(Object element) {
            return null;
        }

        @Override
        public boolean hasChildren(Object element) {
            return !((OutlineItem) element).children().isEmpty();
        }
    }
}
