// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.Comparator;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.ide.ResourceUtil;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.focus.Focus;
import org.loomwright.workbench.truth.ProjectSources;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/** Follows the editors and the selection of a page, and tells the focus. All on the thread that draws; cheap. */
public final class FocusTracker implements ISelectionListener {

    private final IWorkbenchPage page;
    private final Focus focus = Shared.focus();
    private final Rooms rooms = Shared.rooms();

    FocusTracker(IWorkbenchPage page) {
        this.page = page;
    }

    void stop() {
        page.removePostSelectionListener(this);
    }

    /** Begins to follow, and looks at what is there already. Several of one page do no harm. */
    void follow() {
        page.addPostSelectionListener(this);
        IEditorPart editor = page.getActiveEditor();
        if (editor != null) {
            selectionChanged(editor, editor.getSite().getSelectionProvider() == null ? null
                    : editor.getSite().getSelectionProvider().getSelection());
        }
    }

    @Override
    public void selectionChanged(IWorkbenchPart part, ISelection selection) {
        if (part instanceof IEditorPart editor) {
            IFile file = ResourceUtil.getFile(editor.getEditorInput());
            if (file != null && rooms.room(file.getProject()).isPresent()) {
                focus.look(file.getProject());
                if (selection instanceof ITextSelection text && ProjectSources.isSource(file)) {
                    wiring(file, text.getOffset()).ifPresent(found -> focus.enter(found.name().text(),
                            circuit(found, text.getOffset())));
                }
            }
        } else if (selection instanceof IStructuredSelection structured && !structured.isEmpty()) {
            IResource resource = Adapters.adapt(structured.getFirstElement(), IResource.class);
            IProject project = resource == null ? null : resource.getProject();
            if (rooms.room(project).isPresent()) {
                focus.look(project);
            }
        }
    }

    private static int distance(Span span, int offset) {
        return Math.max(0, Math.max(span.offset() - offset, offset - span.end()));
    }

    /** The circuit around an offset; empty for none. */
    private static String circuit(Wiring wiring, int offset) {
        return wiring.circuits().stream().filter(each -> distance(each.span(), offset) == 0)
                .map(each -> each.name().text()).findFirst().orElse("");
    }

    /** The drawing or harness around an offset, else the nearest, by what was last known of the file. */
    private Optional<Wiring> wiring(IFile file, int offset) {
        String name = ProjectSources.name(file);
        return rooms.room(file.getProject()).flatMap(room -> room.truth()).map(Truth::project).stream()
                .flatMap(project -> project.sources().stream()).filter(source -> source.file().equals(name))
                .map(Source::elements).flatMap(elements -> elements.stream()).filter(Wiring.class::isInstance)
                .map(Wiring.class::cast).min(Comparator.comparingInt(element -> distance(element.span(), offset)));
    }
}
