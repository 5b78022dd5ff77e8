// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.importing;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.IImportWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.ide.IDE;
import org.loomwright.workbench.Shared;

/** Takes a wire list over into a new drawing. */
public final class ImportWizard extends Wizard implements IImportWizard {

    private WiresPage page;
    private IWorkbench workbench;

    @Override
    public void init(IWorkbench at, IStructuredSelection selection) {
        workbench = at;
        setWindowTitle("Import a Wire List");
        IResource chosen = Adapters.adapt(selection.getFirstElement(), IResource.class);
        page = new WiresPage(chosen != null ? chosen.getProject() : Shared.focus().project().orElse(null));
    }

    @Override
    public void addPages() {
        addPage(page);
    }

    @Override
    public boolean performFinish() {
        IProject project = page.project();
        IFile file = project.getFile(page.drawing() + ".loom");
        try {
            file.create(new ByteArrayInputStream(page.text().getBytes(StandardCharsets.UTF_8)), false, null);
            IDE.openEditor(workbench.getActiveWorkbenchWindow().getActivePage(), file, true);
            return true;
        } catch (CoreException e) {
            ErrorDialog.openError(getShell(), getWindowTitle(), "The drawing could not be written.", e.getStatus());
            return false;
        }
    }
}
