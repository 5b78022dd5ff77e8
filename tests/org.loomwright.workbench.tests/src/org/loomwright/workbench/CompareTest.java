// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.CompareEditorInput;
import org.eclipse.compare.CompareUI;
import org.eclipse.compare.HistoryItem;
import org.eclipse.compare.ResourceNode;
import org.eclipse.compare.structuremergeviewer.DiffNode;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jgit.api.Git;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IWorkbenchPage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.compare.RevisionInput;

/** Two revisions side by side, and one change taken over. */
class CompareTest {

    private static final String WAS = "branch bBatt from tray to batteryTray 285 mm";
    private static final String IS = "branch bBatt from tray to batteryTray 265 mm";
    private static final String WAS_TOO = "cuttingGrid 5 mm";
    private static final String IS_TOO = "cuttingGrid 10 mm";

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void close() {
        desk.closeAll();
    }

    @Test
    void aRevisionOfGitAndNowAreComparedAndOneChangeIsTakenBack() throws Exception {
        IProject project = desk.orrin("compared");
        IFile file = project.getFile("front-harness.loom");
        try (Git git = Git.init().setDirectory(project.getLocation().toFile()).call()) {
            git.getRepository().getConfig().setBoolean("commit", null, "gpgsign", false);
            git.add().addFilepattern("front-harness.loom").addFilepattern("orrin.loom").addFilepattern(".").call();
            git.commit().setMessage("first").setAuthor("A", "a@example.org").setCommitter("A", "a@example.org")
                    .setSign(false).call();
        }
        String text = new String(file.getContents().readAllBytes(), StandardCharsets.UTF_8);
        String changed = text.replace(WAS, IS).replace(WAS_TOO, IS_TOO);
        file.setContents(new ByteArrayInputStream(changed.getBytes(StandardCharsets.UTF_8)), true, true, null);
        IWorkbenchPage page = desk.page();
        hand.tell(() -> CompareUI.openCompareEditor(new RevisionInput(project, "HEAD", "")));
        Tree files = hand.found("the files that differ", () -> Hand.control(hand.window(), Tree.class,
                each -> each.getItemCount() == 1 && each.getItem(0).getText().contains("front-harness.loom")));
        hand.tell(() -> {
            files.setFocus();
            files.setSelection(files.getItem(0));
            Event event = new Event();
            event.item = files.getItem(0);
            files.notifyListeners(SWT.DefaultSelection, event);
        });
        hand.until("what follows is told", () -> changes().filter(tree -> Arrays.stream(tree.getItems())
                .anyMatch(each -> each.getText().startsWith("follows: fit"))).isPresent());
        hand.press(SWT.CTRL, 'm');
        hand.rest(1_000);
        hand.found("the change of the length", () -> leaf("285"));
        hand.tell(() -> {
            Event event = new Event();
            event.item = leaf("285").orElseThrow();
            changes().orElseThrow().setSelection((TreeItem) event.item);
            changes().orElseThrow().notifyListeners(SWT.Selection, event);
        });
        hand.picture("compare");
        ToolItem take = hand.found("the button that takes it over", () -> Hand.control(hand.window(), ToolBar.class,
                each -> button(each).isPresent()).flatMap(CompareTest::button));
        Rectangle at = hand.ask(take::getBounds);
        hand.click(hand.ask(take::getParent), at.x + at.width / 2, at.y + at.height / 2);
        hand.until("the change is gone from the tree", () -> changes().isPresent() && leaf("285").isEmpty()
                && leaf("10 mm").isPresent());
        hand.until("there is something to save", () -> page.getActiveEditor().isDirty());
        hand.press(SWT.CTRL, 's');
        hand.until("the file has what was taken over and what was not", () -> text(file).contains(WAS)
                && text(file).contains(IS_TOO));
        hand.until("nothing is left to save", () -> !page.getActiveEditor().isDirty());
    }

    private static void compare(DiffNode node) {
        CompareConfiguration configuration = new CompareConfiguration();
        configuration.setLeftEditable(true);
        CompareUI.openCompareEditor(new CompareEditorInput(configuration) {

            @Override
            protected Object prepareInput(IProgressMonitor monitor) {
                return node;
            }
        });
    }

    @Test
    void aFileAndItsLocalHistoryOpenWithATreeOfChangesAndWhatFollows() throws Exception {
        IProject project = desk.orrin("history");
        IFile file = project.getFile("front-harness.loom");
        String changed = text(file).replace(WAS, IS).replace(WAS_TOO, IS_TOO);
        file.setContents(new ByteArrayInputStream(changed.getBytes(StandardCharsets.UTF_8)), true, true, null);
        desk.page();
        ResourceNode now = new ResourceNode(file);
        hand.tell(() -> {
            try {
                compare(new DiffNode(now, new HistoryItem(now, file.getHistory(null)[0])));
            } catch (CoreException e) {
                throw new IllegalStateException(e);
            }
        });
        hand.found("the change of the length", () -> leaf("285"));
        hand.until("what follows is told", () -> changes().filter(tree -> Arrays.stream(tree.getItems())
                .anyMatch(each -> each.getText().startsWith("follows: fit"))).isPresent());
        hand.picture("compare-history");
    }

    @Test
    void twoFilesOpenWithATreeOfWhatDiffersAboveTheTexts() throws Exception {
        IProject project = desk.orrin("history");
        desk.page();
        hand.tell(() -> compare(new DiffNode(new ResourceNode(project.getFile("front-1967.loom")),
                new ResourceNode(project.getFile("front-1964.loom")))));
        hand.until("the tree of changes is filled", () -> changes().filter(tree -> Arrays.stream(tree.getItems())
                .flatMap(each -> Arrays.stream(each.getItems())).anyMatch(each -> each.getText().contains("35")))
                .isPresent());
        hand.found("the text of the one", () -> Hand.control(hand.window(), StyledText.class,
                each -> each.getText().contains("drawing front64")));
        hand.found("the text of the other", () -> Hand.control(hand.window(), StyledText.class,
                each -> each.getText().contains("drawing front67")));
        hand.picture("compare-files");
    }

    private static String text(IFile file) {
        try (InputStream in = file.getContents(true)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException | CoreException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The tree of changes, once there is something in it. */
    private Optional<Tree> changes() {
        return Hand.control(hand.window(), Tree.class, each -> each.getColumnCount() == 2
                && each.getColumn(1).getText().equals("Vehicles") && each.getItemCount() > 1);
    }

    private Optional<TreeItem> leaf(String words) {
        return changes().stream().flatMap(tree -> Arrays.stream(tree.getItems()))
                .flatMap(each -> Arrays.stream(each.getItems()))
                .filter(each -> each.getText().startsWith("changed") && each.getText().contains(words)).findFirst();
    }

    /** The button that takes a change over to the side that can be changed. */
    private static Optional<ToolItem> button(ToolBar bar) {
        return Arrays.stream(bar.getItems()).filter(each -> each.getText().startsWith("Take to") && each.isEnabled())
                .findFirst();
    }
}
