// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.loomwright.compare.matrix.Section;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.truth.Truth;

/** The drawings of a platform side by side: fact by fact, year by year. */
public final class YearsView extends TruthView<YearsSheet> {

    private final Set<Section> sections = EnumSet.allOf(Section.class);
    private Grid grid;
    private volatile String wanted = "";
    private volatile boolean onlyDifferences = true;

    @Override
    protected YearsSheet work(Truth truth, Choice choice, IProgressMonitor monitor) {
        Set<Section> now;
        synchronized (sections) {
            now = Set.copyOf(sections);
        }
        Optional<YearsSheet> tooMany = YearsSheet.tooMany(truth.project());
        if (tooMany.isPresent()) {
            return tooMany.get();
        }
        return YearsSheet.of(truth.matrices(OffUi.cancel(monitor)), wanted, now, onlyDifferences, choice,
                truth.project());
    }

    @Override
    protected String words(YearsSheet now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        grid = new Grid(parent, SWT.LEFT, "Position", "Drawings side by side", name -> {
            wanted = name;
            again();
        }, (row, column) -> model().ifPresent(sheet -> {
            if (column > 0) {
                open(sheet.spans().get(column - 1));
            }
        }), (row, column) -> model().map(sheet -> column == 0 ? sheet.lines().get(row).title()
                : sheet.lines().get(row).details().get(column - 1)).orElse(""));
        Composite bar = new Composite(grid.bar(), SWT.NONE);
        bar.setLayout(new org.eclipse.swt.layout.RowLayout());
        check(bar, "Only &differences", true, on -> onlyDifferences = on);
        for (Section section : Section.values()) {
            check(bar, section.words(), true, on -> {
                synchronized (sections) {
                    if (on) {
                        sections.add(section);
                    } else {
                        sections.remove(section);
                    }
                }
            });
        }
    }

    @Override
    protected void show(YearsSheet now) {
        grid.choices(now.names(), now.name());
        grid.columns("fact", now.heads(), now.tips());
        grid.rows(now.lines().size(), (item, row) -> {
            YearsSheet.Line line = now.lines().get(row);
            item.setText(0, line.title());
            for (int i = 0; i < line.cells().size(); i++) {
                item.setText(i + 1, line.cells().get(i));
            }
        });
    }

    @Override
    public void setFocus() {
        grid.setFocus();
    }

    private void check(Composite bar, String title, boolean on, java.util.function.Consumer<Boolean> set) {
        Button button = new Button(bar, SWT.CHECK);
        button.setText(title);
        button.setSelection(on);
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            set.accept(button.getSelection());
            again();
        }));
    }
}
