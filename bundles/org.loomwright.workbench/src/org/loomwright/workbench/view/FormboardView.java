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

/** The formboard of the harness that the cursor is in, as it is printed; a click leads to the line of a branch. */
public final class FormboardView extends TruthView<BoardPage> {

    private Combo box;
    private BoardCanvas canvas;
    private volatile String wanted = "";
    private volatile String entered = "";

    @Override
    protected BoardPage work(Truth truth, Choice choice, IProgressMonitor monitor) {
        String cursor = focus().wiring();
        if (!cursor.equals(entered)) {
            // going elsewhere in the text counts for more than an older choice in the box
            entered = cursor;
            wanted = "";
        }
        return BoardPage.of(truth.project(), wanted.isEmpty() ? cursor : wanted, choice);
    }

    @Override
    protected String words(BoardPage now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        Composite bar = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(bar);
        new Label(bar, SWT.NONE).setText("Harness");
        box = new Combo(bar, SWT.READ_ONLY);
        box.getAccessible().addAccessibleListener(Names.of("Harness whose formboard is shown"));
        box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            wanted = box.getText();
            again();
        }));
        canvas = new BoardCanvas(parent, "Formboard", 0, name -> name,
                name -> model().map(page -> page.spans().get(name)).ifPresent(this::open));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(canvas.control());
    }

    @Override
    protected void show(BoardPage now) {
        if (!now.names().equals(List.of(box.getItems()))) {
            box.setItems(now.names().toArray(String[]::new));
            box.requestLayout();
        }
        box.select(now.names().indexOf(now.name()));
        canvas.show(now.name(), now.picture());
    }

    @Override
    public void setFocus() {
        canvas.control().setFocus();
    }
}
