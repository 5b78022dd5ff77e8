// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.reconciler.AbstractReconciler;
import org.eclipse.jface.text.reconciler.DirtyRegion;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.loomwright.ide.project.Moment;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/** What an editor shows of what was last read of its text. Worked out off the thread that draws. */
abstract class Following extends AbstractReconciler {

    private final Rooms.Listener told = this::told;
    private final Job job = Job.createSystem("Looking at the text", monitor -> {
        look();
    });
    private ITextViewer viewer;

    /** Works out what is to be shown, for the text that the document holds. Called off the thread that draws. */
    abstract void look(Moment moment, String file);

    final ITextViewer viewer() {
        return viewer;
    }

    @Override
    public void install(ITextViewer text) {
        super.install(text);
        viewer = text;
        Shared.rooms().add(told);
    }

    @Override
    public void uninstall() {
        Shared.rooms().remove(told);
        job.cancel();
        super.uninstall();
    }

    private void told(IProject project, Truth truth) {
        job.schedule();
    }

    /** Looks at the text again, soon. */
    final void again() {
        job.schedule();
    }

    private void look() {
        IDocument document = viewer.getDocument();
        Optional<Asking.Open> open = document == null ? Optional.empty() : Asking.of(document);
        open.flatMap(each -> Asking.last(each, document)).ifPresent(moment -> look(moment, open.get().name()));
    }

    @Override
    protected void process(DirtyRegion region) {
        // the room tells when the text was read
    }

    @Override
    protected void reconcilerDocumentChanged(IDocument document) {
        job.schedule();
    }

    @Override
    public IReconcilingStrategy getReconcilingStrategy(String type) {
        return null;
    }
}
