// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;

/** Asks what a new project begins with. */
final class ProjectContentPage extends WizardPage {

    private ProjectContent chosen = ProjectContent.PLATFORM;

    ProjectContentPage() {
        super("content");
        setTitle("Wiring project");
        setDescription("What shall the project begin with?");
    }

    @Override
    public void createControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().applyTo(all);
        for (ProjectContent each : ProjectContent.values()) {
            Button button = new Button(all, SWT.RADIO);
            button.setText(each.words());
            button.setSelection(each == chosen);
            button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
                if (button.getSelection()) {
                    chosen = each;
                }
            }));
        }
        setControl(all);
    }

    ProjectContent chosen() {
        return chosen;
    }
}
