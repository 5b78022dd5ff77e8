// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.truth.Truth;

/** Chooses vehicles: one box for each thing that can be chosen, and how many vehicles remain. */
public final class VehiclesView extends TruthView<VehicleMenu> {

    private static final String ANY = "any";
    private static final int NARROW = 180;
    /** How many boxes are made before the window may do something else. */
    private static final int AT_ONCE = 3;

    private ScrolledComposite scroll;
    private Composite grid;
    private List<String> shape = List.of();
    private final Map<String, Combo> boxes = new LinkedHashMap<>();
    private Combo platforms;

    @Override
    protected VehicleMenu work(Truth truth, Choice choice, IProgressMonitor monitor) {
        return VehicleMenu.of(truth.project(), choice);
    }

    @Override
    protected String words(VehicleMenu now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        scroll = new ScrolledComposite(parent, SWT.V_SCROLL | SWT.H_SCROLL);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(scroll);
        grid = new Composite(scroll, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(2).equalWidth(true).applyTo(grid);
        scroll.setContent(grid);
    }

    @Override
    protected void show(VehicleMenu now) {
        List<String> wanted = new ArrayList<>(now.platforms());
        wanted.add(now.platform());
        now.rows().forEach(row -> wanted.add(row.axis() + row.options().size()));
        if (!wanted.equals(shape)) {
            shape = wanted;
            build(now);
        }
        fill(now);
    }

    private void fill(VehicleMenu now) {
        for (VehicleMenu.Row row : now.rows()) {
            Combo box = boxes.get(row.axis());
            if (box == null) {
                continue;
            }
            List<String> items = new ArrayList<>(List.of(ANY));
            row.options().forEach(option -> items.add(option.possible() ? option.title()
                    : option.title() + " - none left"));
            if (!items.equals(List.of(box.getItems()))) {
                box.setItems(items.toArray(String[]::new));
            }
            box.select(row.chosen() + 1);
        }
    }

    private void build(VehicleMenu now) {
        for (var child : grid.getChildren()) {
            child.dispose();
        }
        boxes.clear();
        platforms = box("Platform", "platform");
        platforms.setItems(now.platforms().toArray(String[]::new));
        platforms.select(Math.max(0, now.platforms().indexOf(now.platform())));
        platforms.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                focus().choose(new Choice(platforms.getText(), Map.of()))));
        more(now, 0, shape);
    }

    /** Makes some boxes and, later, the next ones, unless others are wanted by then. */
    private void more(VehicleMenu now, int from, List<String> of) {
        if (grid.isDisposed() || of != shape) {
            return;
        }
        List<VehicleMenu.Row> rows = now.rows();
        int to = Math.min(rows.size(), from + AT_ONCE);
        for (VehicleMenu.Row row : rows.subList(from, to)) {
            Combo box = box(row.title(), row.axis());
            boxes.put(row.axis(), box);
            box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                    chosen(row.axis(), box.getSelectionIndex() - 1)));
        }
        if (to < rows.size()) {
            grid.getDisplay().asyncExec(() -> more(now, to, of));
            return;
        }
        fill(model().orElse(now));
        Button all = new Button(grid, SWT.PUSH);
        all.setText("&Every vehicle");
        all.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                focus().choose(new Choice(platforms.getText(), Map.of()))));
        GridDataFactory.swtDefaults().span(2, 1).applyTo(all);
        grid.layout(true);
        scroll.setMinSize(NARROW, grid.computeSize(SWT.DEFAULT, SWT.DEFAULT).y);
    }

    private void chosen(String axis, int index) {
        VehicleMenu now = model().orElseThrow();
        VehicleMenu.Row row = now.rows().stream().filter(each -> each.axis().equals(axis)).findFirst().orElseThrow();
        Choice current = choice().platform().equals(now.platform()) ? choice()
                : new Choice(now.platform(), Map.of());
        focus().choose(current.with(axis, index < 0 ? Optional.empty()
                : Optional.of(row.options().get(index).member())));
    }

    private Combo box(String title, String axis) {
        Label label = new Label(grid, SWT.NONE);
        label.setText(title.replace("&", "&&"));
        label.setToolTipText(title + " (" + axis + ")");
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).hint(1, SWT.DEFAULT).grab(true, false)
                .applyTo(label);
        Combo box = new Combo(grid, SWT.READ_ONLY);
        box.setData("axis", axis);
        box.getAccessible().addAccessibleListener(Names.of(title));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(box);
        return box;
    }
}
