// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Truth;

/** Asks what a new drawing or harness is called, and what it is of. */
final class DrawingPage extends WizardPage {

    private final Supplier<IProject> project;
    private Button harness;
    private Text name;
    private Text title;
    private Combo platform;
    private Combo position;

    /** @param project the project that the file goes to; gives null while none is chosen */
    DrawingPage(Supplier<IProject> project) {
        super("drawing");
        this.project = project;
        setTitle("Drawing or harness");
        setDescription("A drawing is what the factory made; a harness is what we make.");
    }

    @Override
    public void createControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(2).applyTo(all);
        Composite kinds = new Composite(all, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(kinds);
        GridDataFactory.fillDefaults().span(2, 1).applyTo(kinds);
        Button drawing = new Button(kinds, SWT.RADIO);
        drawing.setText("&Drawing of the factory");
        drawing.setSelection(true);
        harness = new Button(kinds, SWT.RADIO);
        harness.setText("&Harness of ours");
        name = text(all, "&Name");
        title = text(all, "&Title");
        platform = combo(all, "&Platform");
        position = combo(all, "P&osition");
        name.addModifyListener(event -> check());
        platform.addModifyListener(event -> positions());
        setControl(all);
        check();
    }

    @Override
    public void setVisible(boolean visible) {
        super.setVisible(visible);
        if (visible && platform.getItemCount() == 0) {
            platform.setItems(known().map(found -> found.platforms().keySet().toArray(String[]::new))
                    .orElse(new String[0]));
            platform.select(0);
            positions();
        }
    }

    /** The text of the file: what was chosen, and the rest to be filled in. */
    String text() {
        boolean ours = harness != null && harness.getSelection();
        return DrawingText.of(ours, value(name, ours ? "harness1" : "drawing1"), value(title, ""),
                platform == null ? "" : platform.getText(), position == null ? "" : position.getText());
    }

    private void check() {
        String written = name.getText().strip();
        String wrong = null;
        if (!written.isEmpty() && !written.matches("[A-Za-z][A-Za-z0-9_]*")) {
            wrong = "A name is made of letters and digits, and begins with a letter.";
        } else if (known().filter(found -> found.wiring(written).isPresent()).isPresent()) {
            wrong = "The project has a drawing or harness called " + written + " already.";
        }
        setErrorMessage(wrong);
        setPageComplete(wrong == null);
    }

    private void positions() {
        position.setItems(known().map(found -> found.platforms().get(platform.getText()))
                .map(PlatformView::platform).map(found -> found.positions().stream().map(each -> each.name().text())
                        .toArray(String[]::new)).orElse(new String[0]));
        position.select(0);
    }

    private Optional<Project> known() {
        IProject at = project.get();
        return at == null ? Optional.empty() : Shared.rooms().truth(at).map(Truth::project);
    }

    private static String value(Text field, String otherwise) {
        return field == null || field.getText().isBlank() ? otherwise : field.getText().strip();
    }

    private static Text text(Composite parent, String label) {
        new Label(parent, SWT.NONE).setText(label);
        Text text = new Text(parent, SWT.BORDER);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
        return text;
    }

    private static Combo combo(Composite parent, String label) {
        new Label(parent, SWT.NONE).setText(label);
        Combo combo = new Combo(parent, SWT.DROP_DOWN);
        combo.setItems(List.<String>of().toArray(String[]::new));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
        return combo;
    }
}
