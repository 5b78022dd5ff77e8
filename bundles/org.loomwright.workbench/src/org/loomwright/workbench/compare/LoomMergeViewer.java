// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.contentmergeviewer.TextMergeViewer;
import org.eclipse.jface.text.source.SourceViewer;
import org.eclipse.swt.widgets.Composite;

/** The texts of two sides beside each other; goes to where the tree of changes points. */
public final class LoomMergeViewer extends TextMergeViewer {

    /** The platform makes the viewers in this order, while the constructor runs: ancestor, left, right. */
    private List<SourceViewer> viewers;

    public LoomMergeViewer(Composite parent, CompareConfiguration configuration) {
        super(parent, configuration);
        Board.of(configuration).viewers(viewers.get(1), viewers.get(2));
    }

    @Override
    protected SourceViewer createSourceViewer(Composite parent, int orientation) {
        if (viewers == null) {
            viewers = new ArrayList<>();
        }
        SourceViewer viewer = super.createSourceViewer(parent, orientation);
        viewers.add(viewer);
        return viewer;
    }
}
