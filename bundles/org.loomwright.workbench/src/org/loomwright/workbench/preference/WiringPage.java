// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.preference;

import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.IntegerFieldEditor;
import org.eclipse.jface.preference.RadioGroupFieldEditor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.eclipse.ui.preferences.ScopedPreferenceStore;
import org.loomwright.quantity.Unit;

/** The page of preferences. */
public final class WiringPage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {

    private static final int WIDTH = 420;

    public WiringPage() {
        super(GRID);
        ScopedPreferenceStore store = new ScopedPreferenceStore(InstanceScope.INSTANCE, Preferences.NODE);
        store.setDefault(Preferences.UNIT, Unit.MM.symbol());
        store.setDefault(Preferences.PAUSE, Preferences.USUAL_PAUSE);
        setPreferenceStore(store);
        setDescription("How lengths are shown, and how soon a text is checked.");
    }

    @Override
    public void init(IWorkbench workbench) {
        // nothing is needed of it
    }

    @Override
    protected void createFieldEditors() {
        addField(new RadioGroupFieldEditor(Preferences.UNIT, "Lengths on the screen", 1, new String[][] {
            {"&Millimetres, rounded down to a tenth", Unit.MM.symbol()},
            {"&Inches, rounded down to a hundredth", Unit.IN.symbol()}}, getFieldEditorParent(), true));
        IntegerFieldEditor pause = new IntegerFieldEditor(Preferences.PAUSE,
                "&Pause in typing before a check, in ms:", getFieldEditorParent());
        pause.setValidRange(Preferences.LEAST_PAUSE, Preferences.MOST_PAUSE);
        pause.setErrorMessage("The pause is a whole number of ms from " + Preferences.LEAST_PAUSE + " to "
                + Preferences.MOST_PAUSE + ".");
        addField(pause);
        Label judging = new Label(getFieldEditorParent(), SWT.WRAP);
        judging.setText("How heavy a finding weighs, and the limits of lengths, voltages and currents with the basis of"
                + " each, stand in a practice of the project: a build server and every engineer judge alike. Write"
                + " \"practice\" and its name into a source to have one.");
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1);
        data.widthHint = WIDTH;
        data.verticalIndent = 12;
        judging.setLayoutData(data);
    }
}
