// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.print.PlanNotes;
import org.loomwright.fit.FitStatus;
import org.loomwright.quantity.Progress;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.text.Inks;
import org.loomwright.workbench.truth.Truth;

/** Places against vehicles, with the margin in each cell; a cell leads to the line that decides it. */
public final class FitView extends TruthView<FitSheet> {

    private static final long PAUSE = 200_000_000;
    private static final int WIDEST = 1_200;
    /** How the height is shared between the places and what is said of the plan. */
    private static final int[] MANY = {3, 2};
    private static final int[] FEW = {1, 3};

    private Grid grid;
    private SashForm sash;
    private Composite above;
    private String shown = "";
    private Table notes;
    private volatile String wanted = "";

    @Override
    protected FitSheet work(Truth truth, Choice choice, IProgressMonitor monitor) {
        String entered = focus().wiring();
        String name = wanted.isEmpty() && truth.project().wiring(entered)
                .filter(each -> each.wiring().isHarness()).isPresent() ? entered : wanted;
        List<Judged> now = truth.fit(OffUi.cancel(monitor), OffUi.progress(monitor));
        if (!name.endsWith(FitSheet.AS_PLANNED)) {
            return FitSheet.of(now, name, choice, truth.project());
        }
        String harness = name.substring(0, name.length() - FitSheet.AS_PLANNED.length());
        return FitSheet.planned(now, harness, truth.planned(harness, Shared.rooms().reader(), OffUi.cancel(monitor),
                progress()), choice, truth.project());
    }

    /** Says now and then how far a plan is. */
    private Progress progress() {
        long[] next = {System.nanoTime() + PAUSE};
        return (what, done, total) -> {
            if (System.nanoTime() - next[0] >= 0) {
                next[0] = System.nanoTime() + PAUSE;
                telling("Planning " + what + " ...");
            }
        };
    }

    @Override
    protected String words(FitSheet now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        sash = new SashForm(parent, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        above = new Composite(sash, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(above);
        grid = new Grid(above, SWT.RIGHT, "Harness", "Fit of the harness", name -> {
            wanted = name;
            again();
        }, (row, column) -> model().ifPresent(sheet -> {
            FitSheet.Line line = sheet.lines().get(row);
            open(column == 0 ? line.span() : line.boxes().get(column - 1).span().orElse(line.span()));
        }), (row, column) -> model().map(sheet -> column == 0 ? sheet.lines().get(row).place()
                : sheet.lines().get(row).boxes().get(column - 1).detail()).orElse(""));
        notes = new Table(sash, SWT.FULL_SELECTION | SWT.BORDER);
        notes.setHeaderVisible(true);
        notes.setLinesVisible(true);
        notes.getAccessible().addAccessibleListener(Names.of("Which vehicles take what"));
        for (String head : List.of("drawing or part", "vehicles", "takes")) {
            new TableColumn(notes, SWT.LEFT).setText(head);
        }
        notes.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> model().ifPresent(
                sheet -> sheet.notes().get(notes.indexOf((TableItem) event.item)).span().ifPresent(this::open))));
        sash.setMaximizedControl(above);
    }

    @Override
    protected void show(FitSheet now) {
        grid.choices(now.harnesses(), now.harness());
        grid.columns("place", now.heads(), now.tips());
        grid.rows(now.lines().size(), (item, row) -> fill(item, now.lines().get(row)));
        notes.setRedraw(false);
        notes.setItemCount(now.notes().size());
        for (int i = 0; i < now.notes().size(); i++) {
            PlanNotes.Note note = now.notes().get(i).said();
            notes.getItem(i).setText(new String[] {note.head(), note.of(), note.words()});
        }
        for (TableColumn column : notes.getColumns()) {
            column.pack();
            column.setWidth(Math.min(column.getWidth(), WIDEST));
        }
        notes.setRedraw(true);
        sash.setMaximizedControl(now.notes().isEmpty() ? above : null);
        if (!now.harness().equals(shown)) {
            shown = now.harness();
            // a view that is low has more room beside the places than below them
            sash.setOrientation(sash.getSize().x > 2 * sash.getSize().y ? SWT.HORIZONTAL : SWT.VERTICAL);
            sash.setWeights(now.lines().isEmpty() ? FEW : MANY);
        }
    }

    @Override
    public void setFocus() {
        grid.setFocus();
    }

    private static void fill(TableItem item, FitSheet.Line line) {
        item.setText(0, line.place());
        for (int i = 0; i < line.boxes().size(); i++) {
            FitSheet.Box box = line.boxes().get(i);
            item.setText(i + 1, box.text());
            item.setForeground(i + 1, color(box));
            item.setFont(i + 1, box.status().filter(FitStatus::isFailure).isPresent()
                    ? JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT) : null);
        }
    }

    private static Color color(FitSheet.Box box) {
        return box.status().filter(FitStatus::isFailure).isPresent()
                ? JFaceResources.getColorRegistry().get(org.eclipse.jface.preference.JFacePreferences.ERROR_COLOR)
                : box.status().filter(each -> each == FitStatus.FITS).isPresent() ? null
                : Inks.PALE.colour();
    }
}
