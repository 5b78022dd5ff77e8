// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks for two revisions. */
final class RevisionDialog extends TitleAreaDialog {

    private final String project;
    private Text before;
    private Text after;
    private String old = "HEAD";
    private String now = "";

    RevisionDialog(Shell parent, String project) {
        super(parent);
        this.project = project;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText("Compare Revisions");
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        setTitle("Compare " + project + " at two revisions of git");
        setMessage("A tag, a branch, the beginning of an id, or HEAD~2. Leave the newer one empty for the files as they"
                + " are now.");
        Composite all = new Composite((Composite) super.createDialogArea(parent), SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(all);
        GridLayoutFactory.swtDefaults().numColumns(2).applyTo(all);
        before = text(all, "&Older revision", old);
        after = text(all, "&Newer revision", now);
        before.addModifyListener(event -> getButton(IDialogConstants.OK_ID)
                .setEnabled(!before.getText().isBlank()));
        return all;
    }

    private static Text text(Composite parent, String label, String value) {
        new Label(parent, SWT.NONE).setText(label);
        Text text = new Text(parent, SWT.BORDER);
        text.setText(value);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
        return text;
    }

    @Override
    protected void okPressed() {
        old = before.getText().strip();
        now = after.getText().strip();
        super.okPressed();
    }

    String old() {
        return old;
    }

    String now() {
        return now;
    }
}
