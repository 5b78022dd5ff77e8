// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.project.FindingMarkers;
import org.loomwright.workbench.project.LoomNature;

/** The wizard for projects, with the example. */
class NewProjectTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @Test
    void theExampleIsMadeCheckedAndShown() throws Exception {
        IWorkbenchPage page = desk.page();
        hand.front();
        hand.tell(() -> {
            try {
                page.showView("org.eclipse.ui.navigator.ProjectExplorer").setFocus();
            } catch (PartInitException e) {
                throw new IllegalStateException(e);
            }
        });
        hand.press(SWT.CTRL, 'n');
        Shell shell = hand.found("the list of wizards", () -> hand.shell("Select a wizard")
                .or(() -> hand.shell("New")));
        Tree tree = hand.found("the wizards", () -> Hand.control(shell, Tree.class, each -> each.getItemCount() > 0));
        hand.tell(() -> {
            tree.setFocus();
            tree.setSelection(tree.getItem(0));
        });
        assertEquals("Wiring Project", hand.ask(() -> tree.getItem(0).getText()));
        hand.press(0, ' ');
        hand.tell(() -> tree.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event()));
        Button next = hand.found("the button Next", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Next") && each.isEnabled()));
        hand.click(next);
        Text name = hand.found("the name", () -> Hand.control(shell, Text.class, each -> each.isEnabled()
                && Hand.control(shell, Tree.class, any -> true).isEmpty()));
        hand.tell(name::setFocus);
        hand.type("car");
        hand.until("the name is typed", () -> name.getText().equals("car"));
        hand.until("the page is complete", next::isEnabled);
        hand.click(next);
        Button orrin = hand.found("the example", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("rrin")));
        hand.click(orrin);
        hand.until("the example is chosen", orrin::getSelection);
        hand.rest(500);
        hand.picture("new-project");
        Button finish = hand.found("the button Finish", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Finish") && each.isEnabled()));
        hand.click(finish);

        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject("car");
        hand.until("the project is there", () -> project.isAccessible() && Desk.truth(project).isPresent());
        assertTrue(project.hasNature(LoomNature.ID));
        assertEquals(sources(), Desk.truth(project).orElseThrow().project().sources().size());
        hand.until("findings are marked", () -> markers(project) > 0
                && markers(project) == Desk.truth(project).orElseThrow().report().counting().size());
        hand.until("the harness is open", () -> page.getActiveEditor() != null
                && page.getActiveEditor().getTitle().equals("front-harness.loom"));
        hand.until("the views show it", () -> Hand.control(hand.window(), org.eclipse.swt.widgets.Label.class,
                each -> each.getText().matches("\\d+ notes? for every vehicle\\.")).isPresent());
        hand.picture("workbench");
    }

    private static long sources() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("loomwright.root"), "docs/examples/orrin"))) {
            return files.filter(each -> each.toString().endsWith(".loom")).count();
        }
    }

    private static int markers(IProject project) {
        try {
            IMarker[] markers = project.findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_INFINITE);
            return markers.length;
        } catch (org.eclipse.core.runtime.CoreException e) {
            throw new IllegalStateException(e);
        }
    }
}
