// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.sheets;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.loomwright.sheets.SheetKind;
import org.loomwright.sheets.page.Paper;

/** Asks what to print, on which paper, and where to. */
final class PrintDialog extends TitleAreaDialog {

    private static final String MESSAGE = "Each document becomes a PDF, and a list also XLSX and CSV. Vehicles are"
            + " written as after 'when' in a source; leave them empty for all.";
    private static final int ROWS = 12;

    private final String project;
    private final List<String> names;
    private Combo name;
    private Text vehicles;
    private Table kinds;
    private Combo paper;
    private Text folder;
    private Button even;
    private Button open;
    private PrintRun run;
    private boolean opening;

    PrintDialog(Shell parent, String project, List<String> names) {
        super(parent);
        this.project = project;
        this.names = names;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText("Print Sheets");
    }

    @Override
    protected boolean isResizable() {
        return true;
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        setTitle("Print documents of " + project);
        setMessage(MESSAGE);
        Composite all = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(all);
        GridLayoutFactory.swtDefaults().numColumns(3).applyTo(all);
        name = combo(all, "&Kit or harness", names);
        vehicles = text(all, "&Vehicles", 2);
        new Label(all, SWT.NONE).setText("&Documents");
        kinds = new Table(all, SWT.CHECK | SWT.BORDER | SWT.V_SCROLL);
        for (String word : SheetKind.words()) {
            TableItem item = new TableItem(kinds, SWT.NONE);
            item.setText(word.replace('-', ' '));
            item.setChecked(true);
        }
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(SWT.DEFAULT, kinds.getItemHeight() * ROWS)
                .applyTo(kinds);
        kinds.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> judge()));
        paper = combo(all, "&Paper", Paper.words());
        folder = text(all, "To &folder", 1);
        folder.setText("sheets");
        folder.addModifyListener(event -> judge());
        Button browse = new Button(all, SWT.PUSH);
        browse.setText("&Browse...");
        browse.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            String chosen = new DirectoryDialog(getShell(), SWT.SAVE).open();
            if (chosen != null) {
                folder.setText(chosen);
            }
        }));
        even = check(all, "Print &even with errors, with a stamp across every page");
        open = check(all, "&Open the folder when it is written");
        return all;
    }

    private static Combo combo(Composite parent, String label, List<String> words) {
        new Label(parent, SWT.NONE).setText(label);
        Combo combo = new Combo(parent, SWT.READ_ONLY);
        combo.setItems(words.toArray(String[]::new));
        combo.select(0);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(combo);
        return combo;
    }

    private static Text text(Composite parent, String label, int columns) {
        new Label(parent, SWT.NONE).setText(label);
        Text text = new Text(parent, SWT.BORDER);
        GridDataFactory.fillDefaults().span(columns, 1).grab(true, false).applyTo(text);
        return text;
    }

    private static Button check(Composite parent, String label) {
        Button button = new Button(parent, SWT.CHECK);
        button.setText(label);
        button.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false, 3, 1));
        return button;
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, "Print", true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
        judge();
    }

    private void judge() {
        Optional<String> objection = asked().objection();
        setErrorMessage(objection.orElse(null));
        Button ok = getButton(IDialogConstants.OK_ID);
        if (ok != null) {
            ok.setEnabled(objection.isEmpty());
        }
    }

    private PrintRun asked() {
        Set<SheetKind> chosen = EnumSet.noneOf(SheetKind.class);
        for (int i = 0; i < kinds.getItemCount(); i++) {
            if (kinds.getItem(i).getChecked()) {
                chosen.add(SheetKind.values()[i]);
            }
        }
        return new PrintRun(name.getText(), vehicles.getText(), chosen,
                Paper.of(paper.getText()).orElse(Paper.A4), folder.getText(), even.getSelection());
    }

    @Override
    protected void okPressed() {
        run = asked();
        opening = open.getSelection();
        super.okPressed();
    }

    /** What was asked for; after OK. */
    PrintRun run() {
        return run;
    }

    /** Whether to show the folder when it is written. */
    boolean opening() {
        return opening;
    }
}
