// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import java.util.Arrays;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.BooleanFieldEditor;
import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.IntegerFieldEditor;
import org.eclipse.jface.preference.RadioGroupFieldEditor;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.eclipse.ui.dialogs.ElementListSelectionDialog;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.eclipse.ui.model.WorkbenchLabelProvider;
import org.eclipse.ui.preferences.ScopedPreferenceStore;
import org.loomwright.electric.ampacity.AircraftTable;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.quantity.Unit;
import org.loomwright.workbench.Shared;

/** The page of preferences. */
public final class WiringPage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {

    private static final int WIDTH = 420;

    public WiringPage() {
        super(GRID);
        ScopedPreferenceStore store = new ScopedPreferenceStore(InstanceScope.INSTANCE, Preferences.NODE);
        store.setDefault(Preferences.UNIT, Unit.MM.symbol());
        store.setDefault(Preferences.SECOND_TABLE, false);
        store.setDefault(Preferences.PAUSE, Preferences.USUAL_PAUSE);
        setPreferenceStore(store);
        setDescription("How lengths and currents are shown, and how soon a text is checked.");
    }

    @Override
    public void init(IWorkbench workbench) {
        // nothing is needed of it
    }

    @Override
    protected void createFieldEditors() {
        addField(new RadioGroupFieldEditor(Preferences.UNIT, "Lengths on the screen", 1, new String[][] {
            {"&Millimetres, to a tenth", Unit.MM.symbol()},
            {"&Inches, to a hundredth", Unit.IN.symbol()}}, getFieldEditorParent(), true));
        IntegerFieldEditor pause = new IntegerFieldEditor(Preferences.PAUSE,
                "&Pause in typing before a check, in ms:", getFieldEditorParent());
        pause.setValidRange(Preferences.LEAST_PAUSE, Preferences.MOST_PAUSE);
        pause.setErrorMessage("The pause is a whole number of ms from " + Preferences.LEAST_PAUSE + " to "
                + Preferences.MOST_PAUSE + ".");
        addField(pause);
        addField(new BooleanFieldEditor(Preferences.SECOND_TABLE, "Tell what a wire may carry by a &second published"
                + " table too, for comparison", getFieldEditorParent()));
        note("The rules judge by " + Ampacity.cfr().table().basis() + "; the second table is " + AircraftTable.BASIS
                + ".");
        Link judging = new Link(getFieldEditorParent(), SWT.WRAP);
        judging.setText("How heavy a finding weighs, and the limits with their basis, are no preference of one person:"
                + " they stand in a practice of the project, so that a build server and every engineer judge alike."
                + " <a>How a project judges...</a>");
        judging.setLayoutData(wide());
        judging.addListener(SWT.Selection, event -> judging());
    }

    private void note(String text) {
        Label note = new Label(getFieldEditorParent(), SWT.WRAP);
        note.setText(text);
        note.setLayoutData(wide());
    }

    private static GridData wide() {
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
        data.widthHint = WIDTH;
        data.verticalIndent = 8;
        return data;
    }

    /** Opens the properties of the only project, or of the one that is chosen. */
    private void judging() {
        IProject[] ours = Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects())
                .filter(each -> Shared.rooms().room(each).isPresent()).toArray(IProject[]::new);
        IProject project = ours.length == 1 ? ours[0] : null;
        if (ours.length > 1) {
            ElementListSelectionDialog choice = new ElementListSelectionDialog(getShell(),
                    new WorkbenchLabelProvider());
            choice.setTitle("How a project judges");
            choice.setMessage("Which project?");
            choice.setElements(ours);
            project = choice.open() == Window.OK ? (IProject) choice.getFirstResult() : null;
        }
        if (project != null) {
            PreferencesUtil.createPropertyDialogOn(getShell(), project, JudgingPage.ID, null, null).open();
        } else if (ours.length == 0) {
            setMessage("There is no wiring project that is open.", INFORMATION);
        }
    }
}
