// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What goes wrong around the workbench does no harm to what somebody has typed. */
class HardTimesTest {

    private static final String SMALL = "platform small \"Small\" {\n    place here\n}\n";

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void close() {
        ErrorDialog.AUTOMATED_MODE = true;
        desk.closeAll();
    }

    private IFile file(IProject project, String name, String text) throws CoreException {
        IFile file = project.getFile(name);
        file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), true, null);
        project.build(IncrementalProjectBuilder.INCREMENTAL_BUILD, null);
        return file;
    }

    private IDocument document(ITextEditor editor) {
        return hand.ask(() -> editor.getDocumentProvider().getDocument(editor.getEditorInput()));
    }

    private void type(ITextEditor editor, int offset, String text) {
        StyledText widget = desk.text(editor);
        hand.front();
        hand.tell(() -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(offset, 0);
            widget.setFocus();
        });
        hand.until("the editor has the keys", widget::isFocusControl);
        hand.type(text);
    }

    @Test
    void aFileThatIsChangedOutsideIsShownAsItIsNow() throws Exception {
        IProject project = desk.empty("outside");
        IFile file = file(project, "changed.loom", SMALL);
        ITextEditor editor = desk.open(file);
        Path path = file.getLocation().toFile().toPath();
        Files.writeString(path, SMALL.replace("here", "elsewhere"));
        file.refreshLocal(IResource.DEPTH_ZERO, null);
        hand.until("the editor shows it", () -> document(editor).get().contains("place elsewhere"));
        project.build(IncrementalProjectBuilder.INCREMENTAL_BUILD, null);
        hand.until("and so does the truth", () -> Desk.truth(project).flatMap(each -> each.project()
                .text("changed.loom")).filter(each -> each.contains("elsewhere")).isPresent());
    }

    @Test
    void whatWasTypedIntoAFileThatIsDeletedOutsideIsKept() throws Exception {
        IProject project = desk.empty("outside");
        IFile file = file(project, "deleted.loom", SMALL.replace("small", "gone"));
        ITextEditor editor = desk.open(file);
        type(editor, 0, "// mine\n");
        hand.until("it is typed", editor::isDirty);
        Files.delete(file.getLocation().toFile().toPath());
        file.refreshLocal(IResource.DEPTH_ZERO, null);
        hand.rest(500);
        assertTrue(document(editor).get().startsWith("// mine\nplatform gone"), "the text is still there");
        type(editor, 0, "/");
        hand.until("and can be worked on", () -> document(editor).get().startsWith("/// mine"));
    }

    @Test
    void anAnalysisThatFailsIsToldInItsViewAndTheEditorLives() throws Exception {
        IProject project = desk.orrin("views");
        ITextEditor editor = desk.open(project.getFile("front-harness.loom"));
        IWorkbenchPage page = desk.page();
        hand.tell(() -> {
            try {
                page.showView("org.loomwright.workbench.tests.broken");
            } catch (PartInitException e) {
                throw new IllegalStateException(e);
            }
        });
        hand.until("the view says so", () -> Hand.control(hand.window(), Label.class, each -> each.getText().contains(
                "This could not be worked out: java.lang.IllegalStateException: this analysis is broken"))
                .isPresent());
        String before = document(editor).get();
        type(editor, 0, "// x");
        hand.until("the editor takes what is typed", () -> document(editor).get().equals("// x" + before));
        hand.tell(() -> {
            editor.doRevertToSaved();
            page.hideView(page.findView("org.loomwright.workbench.tests.broken"));
        });
    }

    @Test
    void aDiskThatIsFullIsToldAndNothingOfTheTextIsLost() throws Exception {
        IProject project = desk.empty("full");
        IFile file = project.getFile("full.loom");
        file.createLink(URI.create(FullDisk.SCHEME + ":/full.loom"), IResource.ALLOW_MISSING_LOCAL, null);
        ITextEditor editor = desk.open(file);
        assertEquals(FullDisk.TEXT, document(editor).get());
        type(editor, 0, "// kept\n");
        hand.until("it is typed", editor::isDirty);
        // the runner of the tests would have it only logged
        ErrorDialog.AUTOMATED_MODE = false;
        hand.press(SWT.CTRL, 's');
        Shell told = hand.found("the failure is told", () -> hand.shell("Save Problems"));
        hand.picture("full-disk");
        assertTrue(hand.ask(() -> Hand.control(told, Label.class, each -> each.getText().contains(
                "Save could not be completed"))).isPresent());
        hand.tell(told::forceActive);
        hand.press(0, SWT.ESC);
        hand.until("the message is gone", told::isDisposed);
        assertTrue(hand.ask(editor::isDirty), "it still waits to be saved");
        assertTrue(document(editor).get().startsWith("// kept\n"));
        type(editor, 0, "/");
        hand.until("and can be worked on", () -> document(editor).get().startsWith("/// kept"));
    }

    @Test
    void aFileOfFiftyThousandLinesIsOpenedCheckedAndTypedInto() throws Exception {
        IProject project = desk.empty("long");
        String text = "platform long \"Long\" {\n" + IntStream.range(0, 50_000).mapToObj(i -> "    place p" + i)
                .collect(Collectors.joining("\n")) + "\n}\n";
        IFile file = file(project, "long.loom", text);
        ITextEditor editor = desk.open(file);
        assertEquals(50_003, document(editor).getNumberOfLines());
        type(editor, text.length() - 3, "");
        for (int i = 0; i < "9999".length(); i++) {
            hand.press(0, SWT.BS);
        }
        hand.until("the last place has another name", () -> document(editor).get().endsWith("    place p4\n}\n"));
        hand.until("that this name stands for two places is found while typing", () -> Desk.truth(project).stream()
                .anyMatch(each -> each.report().counting().stream().anyMatch(found -> found.sentence()
                        .contains("\"p4\""))));
        Tree outline = hand.found("the outline shows the file", () -> Hand.control(hand.window(), Tree.class,
                each -> each.getItemCount() == 1 && each.getItem(0).getText().startsWith("platform long")));
        assertTrue(hand.ask(() -> outline.getItem(0).getItemCount()) <= 501, "some of the places, and a line for more");
        hand.tell(editor::doRevertToSaved);
    }
}
