// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.eclipse.swt.widgets.Display;
import org.loomwright.ide.Services;
import org.loomwright.ide.outline.Folds;
import org.loomwright.ide.project.Moment;

/** Blocks and long comments can be folded. What is folded stays so while its lines stand. */
public final class LoomFolding extends Following {

    /** How many folds are added before the window may do something else; the next look adds more. */
    private static final int AT_ONCE = 25;

    @Override
    void look(Moment moment, String file) {
        String text = moment.text(file);
        var folds = Services.folds(moment, file);
        Display.getDefault().asyncExec(() -> {
            IDocument document = viewer().getDocument();
            if (viewer() instanceof ProjectionViewer projection && projection.getProjectionAnnotationModel() != null
                    && document != null && document.getLength() == text.length()) {
                if (!update(projection.getProjectionAnnotationModel(), document, folds)) {
                    again();
                }
            }
        });
    }

    /** Returns whether all folds are there. */
    private static boolean update(ProjectionAnnotationModel model, IDocument document, Iterable<Folds.Fold> folds) {
        Map<Position, ProjectionAnnotation> wanted = new HashMap<>();
        for (Folds.Fold fold : folds) {
            if (fold.last() <= document.getNumberOfLines()) {
                wanted.put(position(document, fold), new ProjectionAnnotation());
            }
        }
        Map<Annotation, Position> added = new HashMap<>();
        List<Annotation> gone = new ArrayList<>();
        for (Iterator<Annotation> all = model.getAnnotationIterator(); all.hasNext();) {
            Annotation each = all.next();
            if (wanted.remove(model.getPosition(each)) == null) {
                gone.add(each);
            }
        }
        wanted.entrySet().stream().limit(AT_ONCE).forEach(each -> added.put(each.getValue(), each.getKey()));
        if (!added.isEmpty() || !gone.isEmpty()) {
            model.modifyAnnotations(gone.toArray(Annotation[]::new), added, null);
        }
        return added.size() == wanted.size();
    }

    /** From the line that stays visible to the end of the last that is hidden. */
    private static Position position(IDocument document, Folds.Fold fold) {
        try {
            int start = document.getLineOffset(fold.first() - 1);
            int end = document.getLineOffset(fold.last() - 1) + document.getLineLength(fold.last() - 1);
            return new Position(start, end - start);
        } catch (BadLocationException e) {
            throw new IllegalStateException(e);
        }
    }
}
