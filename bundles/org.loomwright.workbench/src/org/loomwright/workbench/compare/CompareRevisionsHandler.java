// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.Optional;
import org.eclipse.compare.CompareUI;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.loomwright.workbench.Shared;

/** Asks for two revisions of git and compares the project that is chosen, else the one that is looked at. */
public final class CompareRevisionsHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        Shell shell = HandlerUtil.getActiveShellChecked(event);
        Optional<IProject> project = HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection chosen
                && Adapters.adapt(chosen.getFirstElement(), IResource.class) != null
                ? Optional.of(Adapters.adapt(chosen.getFirstElement(), IResource.class).getProject())
                : Shared.focus().project();
        if (project.isEmpty()) {
            MessageDialog.openInformation(shell, "Compare Revisions", "Choose a project, or open one of its files.");
            return null;
        }
        RevisionDialog dialog = new RevisionDialog(shell, project.get().getName());
        if (dialog.open() == Window.OK) {
            CompareUI.openCompareEditor(new RevisionInput(project.get(), dialog.old(), dialog.now()));
        }
        return null;
    }
}
