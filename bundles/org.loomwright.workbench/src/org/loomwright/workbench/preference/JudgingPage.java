// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.dialogs.PropertyPage;
import org.loomwright.electric.ampacity.AircraftTable;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.harness.Practice.Weight;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/** A property page of a project: how heavy the findings of each rule weigh, written into a practice of the project. */
public final class JudgingPage extends PropertyPage {

    /** Its id. */
    public static final String ID = Shared.ID + ".judging";

    private static final int ROWS = 14;
    private static final int WIDTH = 760;
    private static final String AS_RULED = "what the rule says";

    private final Rooms.Listener told = (project, truth) -> Display.getDefault().asyncExec(this::read);
    private final Judgement judgement = new Judgement();
    private IProject project;
    private Combo practice;
    private Table rules;
    private Combo weight;
    private Text reason;

    @Override
    protected Control createContents(Composite parent) {
        project = Adapters.adapt(getElement(), IProject.class);
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(all);
        label(all, "&Written into the practice");
        practice = new Combo(all, SWT.READ_ONLY);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(practice);
        practice.addListener(SWT.Selection, event -> {
            judgement.choose(practice.getSelectionIndex());
            fill();
        });
        label(all, "&Rules, and how heavy what they find weighs");
        GridDataFactory.fillDefaults().span(2, 1).applyTo(all.getChildren()[2]);
        rules = table(all);
        label(all, "Findings of the chosen rule wei&gh");
        weight = new Combo(all, SWT.READ_ONLY);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(weight);
        weight.addListener(SWT.Selection, event -> wish());
        label(all, "&Because");
        reason = new Text(all, SWT.BORDER);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(reason);
        reason.addListener(SWT.Modify, event -> wish());
        Label basis = new Label(all, SWT.WRAP);
        basis.setText("What a wire may carry is judged by " + Ampacity.cfr().table().basis()
                + ". No project lowers it; " + AircraftTable.BASIS + " can be shown beside it (Preferences, Wiring)."
                + " The limits that a project may set stand in its practice as well, each with its source.");
        GridDataFactory.fillDefaults().span(2, 1).hint(WIDTH, SWT.DEFAULT).applyTo(basis);
        Shared.rooms().add(told);
        all.addListener(SWT.Dispose, event -> Shared.rooms().remove(told));
        read();
        return all;
    }

    private static void label(Composite parent, String text) {
        new Label(parent, SWT.NONE).setText(text);
    }

    private Table table(Composite parent) {
        Table table = new Table(parent, SWT.BORDER | SWT.SINGLE | SWT.FULL_SELECTION);
        table.setHeaderVisible(true);
        String[] heads = {"Rule", "By itself", "Here", "Because", "What it rests on"};
        int[] widths = {210, 80, 80, 190, 260};
        for (int i = 0; i < heads.length; i++) {
            TableColumn column = new TableColumn(table, SWT.NONE);
            column.setText(heads[i]);
            column.setWidth(widths[i]);
        }
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(WIDTH, ROWS * table.getItemHeight())
                .applyTo(table);
        table.addListener(SWT.Selection, event -> choose());
        return table;
    }

    /** Takes what is known of the project, the first time that something is. */
    private void read() {
        Optional<Truth> truth = Shared.rooms().truth(project);
        if (rules.isDisposed() || judgement.isRead()) {
            return;
        }
        if (truth.filter(each -> judgement.takes(each.project())).isEmpty()) {
            setMessage("The project is being read.", INFORMATION);
            return;
        }
        judgement.read(truth.get().project());
        setMessage(null);
        practice.setItems(judgement.practices().toArray(String[]::new));
        practice.select(0);
        fill();
    }

    private void fill() {
        int chosen = Math.max(0, rules.getSelectionIndex());
        rules.removeAll();
        judgement.rows().forEach(row -> show(row, new TableItem(rules, SWT.NONE)));
        rules.select(chosen);
        choose();
    }

    private static void show(Judgement.Row row, TableItem item) {
        item.setText(new String[] {row.rule().id(), row.rule().severity().words(),
            row.weight().map(Weight::words).orElse(""), row.weight().isPresent() ? row.reason() : "",
            row.rule().basis()});
    }

    private void choose() {
        if (rules.getSelectionIndex() < 0) {
            return;
        }
        Judgement.Row row = judgement.rows().get(rules.getSelectionIndex());
        weight.setItems(AS_RULED);
        row.choices().forEach(each -> weight.add(each.words()));
        weight.select(row.weight().map(row.choices()::indexOf).orElse(-1) + 1);
        reason.setText(row.reason());
        reason.setEnabled(row.weight().isPresent());
    }

    private void wish() {
        int at = rules.getSelectionIndex();
        if (at < 0) {
            return;
        }
        Judgement.Row before = judgement.rows().get(at);
        int chosen = weight.getSelectionIndex();
        Judgement.Row now = before.with(chosen <= 0 ? Optional.empty()
                : Optional.of(before.choices().get(chosen - 1)), reason.getText());
        judgement.set(at, now);
        show(now, rules.getItem(at));
        reason.setEnabled(now.weight().isPresent());
        Optional<String> wrong = judgement.wrong();
        setErrorMessage(wrong.orElse(null));
        setValid(wrong.isEmpty());
    }

    @Override
    protected void performDefaults() {
        judgement.asRuled();
        fill();
        setErrorMessage(null);
        setValid(true);
        super.performDefaults();
    }

    @Override
    public boolean performOk() {
        if (!judgement.isRead() || judgement.wishes().isEmpty()) {
            return true;
        }
        Optional<String> wrong = new JudgementWriter(project, getShell()).write(judgement);
        setErrorMessage(wrong.orElse(null));
        if (wrong.isEmpty()) {
            judgement.written();
        }
        return wrong.isEmpty();
    }
}
