// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.reconciler.AbstractReconciler;
import org.eclipse.jface.text.reconciler.DirtyRegion;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.ISourceViewerExtension5;
import org.eclipse.jface.viewers.IPostSelectionProvider;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.swt.widgets.Display;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Occurrence;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.project.FindingMarkers;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/**
 * What an editor shows while somebody writes: findings that are not marked yet, and all words that name the same as the
 * one at the cursor. Worked out off the thread that draws.
 */
public final class LoomLive extends AbstractReconciler {

    private static final String OCCURRENCE = "org.eclipse.ui.genericeditor.text";
    private static final long PAUSE = 120;

    private final Rooms.Listener told = this::told;
    private final ISelectionChangedListener moved = event -> later();
    private final Job job = Job.createSystem("Looking at the text", monitor -> {
        look();
    });
    private final Set<Annotation> shown = new HashSet<>();
    private volatile int caret;
    private ITextViewer viewer;

    @Override
    public void install(ITextViewer text) {
        super.install(text);
        viewer = text;
        Shared.rooms().add(told);
        if (text.getSelectionProvider() instanceof IPostSelectionProvider provider) {
            provider.addPostSelectionChangedListener(moved);
        }
        later();
    }

    @Override
    public void uninstall() {
        Shared.rooms().remove(told);
        job.cancel();
        if (viewer != null && viewer.getSelectionProvider() instanceof IPostSelectionProvider provider) {
            provider.removePostSelectionChangedListener(moved);
        }
        super.uninstall();
    }

    private void later() {
        if (viewer.getSelectionProvider().getSelection() instanceof ITextSelection selection) {
            caret = selection.getOffset();
        }
        job.schedule(PAUSE);
    }

    private void told(IProject project, Truth truth) {
        job.schedule();
        Display.getDefault().asyncExec(() -> {
            if (viewer instanceof ISourceViewerExtension5 mined && viewer.getTextWidget() != null) {
                mined.updateCodeMinings();
            }
        });
    }

    private void look() {
        IDocument document = viewer.getDocument();
        if (document == null || !(viewer instanceof ISourceViewer source) || source.getAnnotationModel() == null) {
            return;
        }
        Optional<Asking.Open> open = Asking.of(document);
        Optional<Moment> moment = open.flatMap(each -> Asking.last(each, document));
        if (moment.isEmpty()) {
            return;
        }
        String file = open.get().name();
        Map<Annotation, Position> wanted = new HashMap<>();
        Set<String> marked = marked(open.get());
        for (Finding finding : moment.get().findings(file)) {
            if (finding.counts() && !marked.contains(finding.fingerprint())) {
                wanted.put(new Annotation(type(finding), false, FindingMarkers.message(finding)),
                        new Position(finding.place().span().offset(), finding.place().span().length()));
            }
        }
        List<Occurrence> occurrences = Services.highlights(moment.get(), file, caret);
        if (occurrences.size() > 1) {
            occurrences.forEach(each -> wanted.put(new Annotation(OCCURRENCE, false, each.declares() ? "declared here"
                    : "used here"), new Position(each.span().offset(), each.span().length())));
        }
        replace(source.getAnnotationModel(), wanted);
        if (moment.get().settled()) {
            Shared.start().shown(file, moment.get().findings().size());
        }
    }

    private synchronized void replace(IAnnotationModel model, Map<Annotation, Position> wanted) {
        if (model instanceof IAnnotationModelExtension extension && !(shown.isEmpty() && wanted.isEmpty())) {
            extension.replaceAnnotations(shown.toArray(Annotation[]::new), wanted);
            shown.clear();
            shown.addAll(wanted.keySet());
        }
    }

    private static Set<String> marked(Asking.Open open) {
        Set<String> marked = new HashSet<>();
        try {
            Arrays.stream(open.file().findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_ZERO))
                    .map((IMarker marker) -> marker.getAttribute(FindingMarkers.FINGERPRINT, "")).forEach(marked::add);
        } catch (CoreException e) {
            // the file is gone; nothing is marked
        }
        return marked;
    }

    private static String type(Finding finding) {
        return "org.eclipse.ui.workbench.texteditor." + switch (finding.severity()) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case NOTE -> "info";
        };
    }

    @Override
    protected void process(DirtyRegion region) {
        // the room tells when the text was read
    }

    @Override
    protected void reconcilerDocumentChanged(IDocument document) {
        // the room tells when the text was read
    }

    @Override
    public IReconcilingStrategy getReconcilingStrategy(String type) {
        return null;
    }
}
