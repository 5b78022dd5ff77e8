// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.workbench.project.ProjectContent;
import org.loomwright.workbench.project.ProjectMaker;
import org.loomwright.workbench.start.LoomPerspective;
import org.loomwright.workbench.truth.Truth;

/** A workbench with the Orrin in it, made ready without hands, so that a test begins where its story does. */
final class Desk {

    private final Hand hand = new Hand();

    Hand hand() {
        return hand;
    }

    /** The page, with our perspective and a window of a decent size. */
    IWorkbenchPage page() {
        return hand.ask(() -> {
            var window = PlatformUI.getWorkbench().getWorkbenchWindows()[0];
            window.getShell().setBounds(0, 0, 1440, 900);
            window.getShell().forceActive();
            IViewPart welcome = window.getActivePage().findView("org.eclipse.ui.internal.introview");
            if (welcome != null) {
                window.getActivePage().hideView(welcome);
            }
            try {
                return (IWorkbenchPage) PlatformUI.getWorkbench().showPerspective(LoomPerspective.ID, window);
            } catch (WorkbenchException e) {
                throw new IllegalStateException(e);
            }
        });
    }

    /** A project with the Orrin in it, checked. */
    IProject orrin(String name) throws CoreException {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
        if (!project.exists()) {
            ResourcesPlugin.getWorkspace().run(monitor ->
                    ProjectMaker.make(project, null, ProjectContent.ORRIN, monitor), new NullProgressMonitor());
        }
        project.build(IncrementalProjectBuilder.INCREMENTAL_BUILD, null);
        hand.until("the project is checked", () -> truth(project).isPresent());
        return project;
    }

    /** A project without the files of an example. */
    IProject empty(String name) throws CoreException {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
        if (!project.exists()) {
            ResourcesPlugin.getWorkspace().run(monitor ->
                    ProjectMaker.make(project, null, ProjectContent.NOTHING, monitor), new NullProgressMonitor());
        }
        return project;
    }

    static Optional<Truth> truth(IProject project) {
        return Shared.rooms().truth(project);
    }

    ITextEditor open(IFile file) {
        IWorkbenchPage page = page();
        return hand.ask(() -> {
            try {
                return (ITextEditor) IDE.openEditor(page, file, true);
            } catch (PartInitException e) {
                throw new IllegalStateException(e);
            }
        });
    }

    IViewPart view(String name) {
        IWorkbenchPage page = page();
        return hand.ask(() -> {
            try {
                return page.showView(Shared.ID + ".view." + name);
            } catch (PartInitException e) {
                throw new IllegalStateException(e);
            }
        });
    }

    /** The text widget of an editor. */
    StyledText text(ITextEditor editor) {
        return hand.ask(() -> editor.getAdapter(ITextViewer.class).getTextWidget());
    }

    void closeAll() {
        hand.tell(() -> PlatformUI.getWorkbench().getWorkbenchWindows()[0].getActivePage().closeAllEditors(false));
    }
}
