// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.loomwright.harness.Span;
import org.loomwright.sheets.compose.BoardPicture;
import org.loomwright.sheets.flow.CircuitPicture;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.truth.Truth;

/**
 * The circuit that the cursor is in, from its source to ground, with the voltages and currents of the chosen vehicle in
 * one mode; a click on a wire leads to its line.
 */
public final class CircuitView extends TruthView<CircuitPage> {

    private static final String MOST = "where most flows";
    /** Dots a mm at which letters are as large as those of the window. */
    private static final double READABLE = 3.4;

    private Combo circuit;
    private Combo mode;
    private Combo fitted;
    private BoardCanvas canvas;
    private volatile CircuitPage.Wanted wanted = new CircuitPage.Wanted("", "", "");
    private volatile String entered = "";

    @Override
    protected CircuitPage work(Truth truth, Choice choice, IProgressMonitor monitor) {
        String cursor = focus().wiring() + "\n" + focus().circuit();
        if (!cursor.equals(entered)) {
            // going elsewhere in the text counts for more than an older choice in a box; the mode stays
            entered = cursor;
            wanted = new CircuitPage.Wanted("", wanted.mode(), "");
        }
        CircuitPage.Wanted now = wanted;
        return CircuitPage.of(truth.project(), focus().wiring(), new CircuitPage.Wanted(now.circuit().isEmpty()
                ? focus().circuit() : now.circuit(), now.mode(), now.fitted()), choice, OffUi.cancel(monitor));
    }

    @Override
    protected String words(CircuitPage now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        Composite bar = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(6).applyTo(bar);
        circuit = box(bar, "Circuit", "Circuit that is shown",
                text -> new CircuitPage.Wanted(text, wanted.mode(), wanted.fitted()));
        mode = box(bar, "Mode", "Mode of the vehicle: switch positions and engine",
                text -> new CircuitPage.Wanted(wanted.circuit(), text.equals(MOST) ? "" : text, wanted.fitted()));
        fitted = box(bar, "Fitted", "What is fitted to the vehicle",
                text -> new CircuitPage.Wanted(wanted.circuit(), wanted.mode(), text));
        canvas = new BoardCanvas(parent, "Circuit", READABLE,
                name -> item(name).map(CircuitPicture.Item::words).orElse(name),
                name -> item(name).map(CircuitPicture.Item::place).filter(each -> each != Span.NONE)
                        .ifPresent(this::open));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(canvas.control());
    }

    private Combo box(Composite bar, String label, String name,
            java.util.function.Function<String, CircuitPage.Wanted> with) {
        new Label(bar, SWT.NONE).setText(label);
        Combo box = new Combo(bar, SWT.READ_ONLY);
        box.setData("choice", label);
        box.getAccessible().addAccessibleListener(Names.of(name));
        Consumer<String> chosen = text -> {
            wanted = with.apply(text);
            again();
        };
        box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chosen.accept(box.getText())));
        return box;
    }

    private Optional<CircuitPicture.Item> item(String name) {
        return model().flatMap(CircuitPage::picture).map(each -> each.items().get(name));
    }

    @Override
    protected void show(CircuitPage now) {
        CircuitPage.Wanted next = wanted;
        fill(circuit, now.circuits(), next.circuit().isEmpty() ? now.shown().circuit() : next.circuit());
        List<String> modes = new ArrayList<>();
        if (!now.modes().isEmpty()) {
            modes.add(MOST);
            modes.addAll(now.modes());
        }
        fill(mode, modes, next.mode().isEmpty() ? MOST : next.mode());
        fill(fitted, now.fitted(), next.fitted().isEmpty() ? now.shown().fitted() : next.fitted());
        canvas.show(now.shown().circuit() + " " + now.shown().fitted(), now.picture()
                .map(each -> new BoardPicture(each.drawing(), true, each.paths())));
    }

    private static void fill(Combo box, List<String> items, String selected) {
        if (!items.equals(List.of(box.getItems()))) {
            box.setItems(items.toArray(String[]::new));
            box.requestLayout();
        }
        if (box.getSelectionIndex() != items.indexOf(selected)) {
            box.select(items.indexOf(selected));
        }
    }

    @Override
    public void setFocus() {
        canvas.control().setFocus();
    }
}
