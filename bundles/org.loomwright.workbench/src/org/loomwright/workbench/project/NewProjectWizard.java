// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.lang.reflect.InvocationTargetException;
import java.net.URI;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.actions.WorkspaceModifyOperation;
import org.eclipse.ui.dialogs.WizardNewProjectCreationPage;
import org.eclipse.ui.ide.IDE;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.start.LoomPerspective;

/** Makes a project: with a first platform in it, or with the Orrin 1200 as an example. */
public final class NewProjectWizard extends Wizard implements INewWizard {

    private final WizardNewProjectCreationPage place = new WizardNewProjectCreationPage("place");
    private final ProjectContentPage content = new ProjectContentPage();
    private IWorkbench workbench;

    @Override
    public void init(IWorkbench at, IStructuredSelection selection) {
        workbench = at;
        setWindowTitle("New Wiring Project");
        setNeedsProgressMonitor(true);
    }

    @Override
    public void addPages() {
        place.setTitle("Wiring project");
        place.setDescription("A project holds the drawings, harnesses and kits of one platform or of a few.");
        addPage(place);
        addPage(content);
    }

    @Override
    public boolean performFinish() {
        IProject project = place.getProjectHandle();
        URI location = place.useDefaults() ? null : place.getLocationURI();
        ProjectContent chosen = content.chosen();
        IFile[] first = new IFile[1];
        try {
            getContainer().run(true, true, new WorkspaceModifyOperation() {

                @Override
                protected void execute(IProgressMonitor monitor) throws CoreException {
                    first[0] = ProjectMaker.make(project, location, chosen, monitor);
                }
            });
        } catch (InvocationTargetException e) {
            Throwable cause = e.getTargetException();
            ILog.get().warn("the project could not be made", cause);
            if (cause instanceof CoreException core) {
                ErrorDialog.openError(getShell(), getWindowTitle(), "The project could not be made.",
                        core.getStatus());
            } else {
                MessageDialog.openError(getShell(), getWindowTitle(), "The project could not be made: " + cause);
            }
            return false;
        } catch (InterruptedException e) {
            return false;
        }
        show(project, first[0]);
        return true;
    }

    private void show(IProject project, IFile first) {
        Shared.focus().look(project);
        try {
            IWorkbenchPage page = workbench.showPerspective(LoomPerspective.ID, workbench.getActiveWorkbenchWindow())
                    instanceof IWorkbenchPage shown ? shown : workbench.getActiveWorkbenchWindow().getActivePage();
            if (first != null) {
                IDE.openEditor(page, first, true);
            }
        } catch (WorkbenchException e) {
            ILog.get().error("the new project cannot be shown", e);
        }
    }
}
