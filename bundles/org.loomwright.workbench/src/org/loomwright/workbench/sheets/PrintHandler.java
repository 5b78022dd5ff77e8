// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.sheets;

import java.util.List;
import java.util.Optional;
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
import org.loomwright.workbench.truth.Truth;

/** Asks what to print of the project that is chosen, else of the one that is looked at, and prints it. */
public final class PrintHandler extends AbstractHandler {

    private static final String TITLE = "Print Sheets";

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        Shell shell = HandlerUtil.getActiveShellChecked(event);
        Optional<IProject> project = HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection chosen
                && Adapters.adapt(chosen.getFirstElement(), IResource.class) != null
                ? Optional.of(Adapters.adapt(chosen.getFirstElement(), IResource.class).getProject())
                : Shared.focus().project();
        if (project.isEmpty() || project.get().getLocation() == null) {
            MessageDialog.openInformation(shell, TITLE, "Choose a project, or open one of its files.");
            return null;
        }
        Optional<Truth> truth = Shared.rooms().truth(project.get());
        if (truth.isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, "The project is being read. Try again in a moment.");
            return null;
        }
        List<String> names = PrintRun.names(truth.get().project());
        if (names.isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, "The project has no harness and no kit to print.");
            return null;
        }
        PrintDialog dialog = new PrintDialog(shell, project.get().getName(), names);
        if (dialog.open() == Window.OK) {
            new PrintJob(dialog.run(), truth.get().project(), project.get().getLocation().toFile().toPath(),
                    Shared.rooms().reader(), dialog.opening()).schedule();
        }
        return null;
    }
}
