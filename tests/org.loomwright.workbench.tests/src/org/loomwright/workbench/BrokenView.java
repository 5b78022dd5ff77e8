// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.swt.widgets.Composite;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.truth.Truth;
import org.loomwright.workbench.view.TruthView;

/** A view whose analysis always fails. */
public final class BrokenView extends TruthView<String> {

    @Override
    protected String work(Truth truth, Choice choice, IProgressMonitor monitor) {
        throw new IllegalStateException("this analysis is broken");
    }

    @Override
    protected void create(Composite parent) {
        // nothing is ever shown
    }

    @Override
    protected void show(String now) {
        throw new AssertionError("there is nothing to show");
    }

    @Override
    protected String words(String now) {
        return now;
    }
}
