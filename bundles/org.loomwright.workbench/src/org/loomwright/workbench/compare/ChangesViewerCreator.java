// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.IViewerCreator;
import org.eclipse.jface.viewers.Viewer;
import org.eclipse.swt.widgets.Composite;

/** Makes the tree of changes of a comparison of drawings. */
public final class ChangesViewerCreator implements IViewerCreator {

    @Override
    public Viewer createViewer(Composite parent, CompareConfiguration configuration) {
        return new ChangesViewer(parent, configuration);
    }
}
