// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.truth.Truth;

/** The harness or drawing that the cursor is in, as a strip along its trunk; a click leads to the line. */
public final class HarnessView extends TruthView<Strip> {

    private Combo box;
    private StripCanvas canvas;
    private volatile String wanted = "";
    private volatile String entered = "";

    @Override
    protected Strip work(Truth truth, Choice choice, IProgressMonitor monitor) {
        String cursor = focus().wiring();
        if (!cursor.equals(entered)) {
            // going elsewhere in the text counts for more than an older choice in the box
            entered = cursor;
            wanted = "";
        }
        return Strip.of(truth.project(), wanted.isEmpty() ? cursor : wanted, choice);
    }

    @Override
    protected String words(Strip now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        Composite bar = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(bar);
        new Label(bar, SWT.NONE).setText("Shown");
        box = new Combo(bar, SWT.READ_ONLY);
        box.getAccessible().addAccessibleListener(Names.of("Drawing or harness that is shown"));
        box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            wanted = box.getText();
            again();
        }));
        canvas = new StripCanvas(parent, item -> open(item.span()));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(canvas.control());
    }

    @Override
    protected void show(Strip now) {
        if (!now.names().equals(List.of(box.getItems()))) {
            box.setItems(now.names().toArray(String[]::new));
            box.requestLayout();
        }
        box.select(now.names().indexOf(now.name()));
        canvas.show(now);
    }

    @Override
    public void setFocus() {
        canvas.control().setFocus();
    }
}
