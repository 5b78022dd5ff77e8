// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
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
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jgit.api.Git;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IObjectActionDelegate;
import org.eclipse.ui.IWorkbenchPage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.Aspect;
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
        hand.front();
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

    @Test
    void classesOfChangesAreHiddenAndChangesTakenOverToEitherSideByKeysAlone() throws Exception {
        IProject project = desk.empty("sides");
        IFile left = made(project, "left.loom", SmallHarness.TEXT);
        IFile right = made(project, "right.loom", SmallHarness.TEXT.replace("200 mm", "210 mm")
                .replace("\"One\"", "\"Uno\""));
        eachOther(left, right);
        Tree tree = hand.found("both changes", () -> changes().filter(each -> leaf("210").isPresent()
                && leaf("Uno").isPresent()));
        assertTrue(hand.ask(() -> leaf("210").orElseThrow().getText(1)).contains("vehicle"), "who feels it is told");
        hand.tell(tree::setFocus);
        hand.until("the tree has the keys", tree::isFocusControl);
        fromMenu(2, Aspect.GEOMETRY.ordinal());
        hand.until("changes of geometry are hidden", () -> leaf("210").isEmpty() && leaf("Uno").isPresent());
        fromMenu(2, Aspect.GEOMETRY.ordinal());
        hand.until("they are shown again", () -> leaf("210").isPresent());
        walkTo(tree, "210");
        fromMenu(1, -1);
        hand.until("the length is taken over to the right", () -> leaf("210").isEmpty() && leaf("Uno").isPresent());
        walkTo(tree, "Uno");
        hand.picture("compare-keys");
        fromMenu(0, -1);
        hand.until("the title is taken over to the left", () -> leaf("Uno").isEmpty());
        hand.press(SWT.CTRL, 's');
        hand.until("both files are saved", () -> text(right).contains("200 mm") && text(right).contains("\"Uno\"")
                && text(left).contains("200 mm") && text(left).contains("\"Uno\""));
    }

    /** Chooses from the menu of the tree; from its menu of what is shown if the second number is not negative. */
    private void fromMenu(int item, int below) {
        hand.press(SWT.SHIFT, SWT.F10);
        hand.rest(300);
        downs(item + 1);
        if (below >= 0) {
            hand.press(0, SWT.ARROW_RIGHT);
            hand.rest(200);
            downs(below);
        }
        hand.press(0, SWT.CR);
    }

    private void downs(int times) {
        for (int i = 0; i < times; i++) {
            hand.press(0, SWT.ARROW_DOWN);
        }
    }

    private void walkTo(Tree tree, String words) {
        hand.tell(tree::setFocus);
        hand.press(0, SWT.HOME);
        for (int i = 0; i < 20; i++) {
            if (hand.ask(() -> Arrays.stream(tree.getSelection()).anyMatch(each -> each.getText().startsWith("changed")
                    && each.getText().contains(words)))) {
                return;
            }
            hand.press(0, SWT.ARROW_DOWN);
        }
        throw new AssertionError("the keys do not lead to " + words);
    }

    private static IFile made(IProject project, String name, String text) throws CoreException {
        IFile file = project.getFile(name);
        file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), true, null);
        return file;
    }

    /** What the platform does for Compare With, Each Other. */
    private void eachOther(IFile left, IFile right) throws Exception {
        IWorkbenchPage page = desk.page();
        hand.front();
        IObjectActionDelegate compare = (IObjectActionDelegate) Platform.getBundle("org.eclipse.compare")
                .loadClass("org.eclipse.compare.internal.CompareAction").getConstructor().newInstance();
        hand.tell(() -> {
            compare.setActivePart(null, page.getViewReferences()[0].getPart(true));
            compare.selectionChanged(new Action() {
            }, new StructuredSelection(List.of(left, right)));
        });
        hand.display().asyncExec(() -> compare.run(null));
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
        return Hand.control(hand.window(), Tree.class, each -> each.getColumnCount() == 2
                && each.getColumn(1).getText().equals("Vehicles")).stream()
                .flatMap(tree -> Arrays.stream(tree.getItems())).flatMap(each -> Arrays.stream(each.getItems()))
                .filter(each -> each.getText().startsWith("changed") && each.getText().contains(words)).findFirst();
    }

    /** The button that takes a change over to the side that can be changed. */
    private static Optional<ToolItem> button(ToolBar bar) {
        return Arrays.stream(bar.getItems()).filter(each -> each.getText().startsWith("Take to") && each.isEnabled())
                .findFirst();
    }
}
