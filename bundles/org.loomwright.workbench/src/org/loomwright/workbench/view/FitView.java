// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.TableItem;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.fit.FitStatus;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.text.Inks;
import org.loomwright.workbench.truth.Truth;

/** Places against vehicles, with the margin in each cell; a cell leads to the line that decides it. */
public final class FitView extends TruthView<FitSheet> {

    private Grid grid;
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
                OffUi.progress(monitor)), choice, truth.project());
    }

    @Override
    protected String words(FitSheet now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        grid = new Grid(parent, SWT.RIGHT, "Harness", "Fit of the harness", name -> {
            wanted = name;
            again();
        }, (row, column) -> model().ifPresent(sheet -> {
            FitSheet.Line line = sheet.lines().get(row);
            open(column == 0 ? line.span() : line.boxes().get(column - 1).span().orElse(line.span()));
        }), (row, column) -> model().map(sheet -> column == 0 ? sheet.lines().get(row).place()
                : sheet.lines().get(row).boxes().get(column - 1).detail()).orElse(""));
    }

    @Override
    protected void show(FitSheet now) {
        grid.choices(now.harnesses(), now.harness());
        grid.columns("place", now.heads(), now.tips());
        grid.rows(now.lines().size(), (item, row) -> fill(item, now.lines().get(row)));
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
