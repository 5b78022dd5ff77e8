// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.dialogs.WizardNewFileCreationPage;
import org.eclipse.ui.ide.IDE;

/** Makes a file with a drawing, or a harness of ours, to be filled in. */
public final class NewDrawingWizard extends Wizard implements INewWizard {

    private final DrawingPage drawing = new DrawingPage(this::project);
    private WizardNewFileCreationPage place;
    private IWorkbench workbench;

    @Override
    public void init(IWorkbench at, IStructuredSelection selection) {
        workbench = at;
        setWindowTitle("New Drawing or Harness");
        place = new WizardNewFileCreationPage("place", selection) {

            @Override
            protected InputStream getInitialContents() {
                return new ByteArrayInputStream(drawing.text().getBytes(StandardCharsets.UTF_8));
            }
        };
        place.setTitle("Drawing or harness");
        place.setDescription("Where its file goes.");
        place.setFileExtension("loom");
        place.setFileName("drawing.loom");
    }

    @Override
    public void addPages() {
        addPage(place);
        addPage(drawing);
    }

    private IProject project() {
        return place.getContainerFullPath() == null ? null
                : ResourcesPlugin.getWorkspace().getRoot().getProject(place.getContainerFullPath().segment(0));
    }

    @Override
    public boolean performFinish() {
        IFile file = place.createNewFile();
        if (file == null) {
            return false;
        }
        try {
            IDE.openEditor(workbench.getActiveWorkbenchWindow().getActivePage(), file, true);
        } catch (PartInitException e) {
            ILog.get().error(file.getFullPath() + " cannot be opened", e);
        }
        return true;
    }
}
