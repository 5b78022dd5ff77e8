// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.projection.ProjectionViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.editor.LoomCompletion;
import org.loomwright.workbench.editor.LoomHover;
import org.loomwright.workbench.editor.LoomLinks;
import org.loomwright.workbench.project.FindingMarkers;

/** The editor: what it says while somebody writes, and what it does when asked. */
class EditorTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void close() {
        desk.closeAll();
    }

    @Test
    void aMistakeIsShownWhileItIsTypedMarkedWhenSavedAndMendedByAQuickFix() throws Exception {
        IProject project = desk.orrin("typing");
        IFile file = project.getFile("hazard-lead.loom");
        ITextEditor editor = desk.open(file);
        ITextViewer viewer = hand.ask(() -> editor.getAdapter(ITextViewer.class));
        IDocument document = hand.ask(viewer::getDocument);
        String before = hand.ask(document::get);
        int offset = before.indexOf("of orrin") + "of or".length();
        hand.tell(() -> {
            editor.selectAndReveal(offset, 1);
            viewer.getTextWidget().setFocus();
        });
        hand.press(0, SWT.DEL);
        hand.until("the letter is gone", () -> document.getLength() == before.length() - 1);
        hand.until("the mistake is shown before anything is saved", () -> says(viewer, "orin"));
        hand.press(SWT.CTRL, 's');
        hand.until("the mistake is marked", () -> Arrays.stream(markers(file))
                .anyMatch(each -> each.getAttribute(IMarker.MESSAGE, "").contains("orin")));
        hand.tell(() -> editor.selectAndReveal(offset, 0));
        hand.press(SWT.CTRL, '1');
        Table fixes = hand.found("the list of quick fixes", () -> popup(Table.class));
        hand.until("it offers the right name", () -> fixes.getItemCount() > 0
                && Arrays.stream(fixes.getItems()).anyMatch(each -> each.getText().contains("orrin")));
        hand.picture("quick-fix");
        hand.tell(fixes::setFocus);
        hand.press(0, SWT.CR);
        hand.until("the text is mended", () -> document.get().equals(before));
        hand.press(SWT.CTRL, 's');
        hand.until("the mark is gone", () -> Arrays.stream(markers(file))
                .noneMatch(each -> each.getAttribute(IMarker.MESSAGE, "").contains("orin'")));
    }

    @Test
    void completionHoverAndDeclarationKnowTheProject() throws Exception {
        IProject project = desk.orrin("views");
        ITextEditor editor = desk.open(project.getFile("front-harness.loom"));
        ITextViewer viewer = hand.ask(() -> editor.getAdapter(ITextViewer.class));
        String text = hand.ask(() -> viewer.getDocument().get());
        int place = text.indexOf("branch bBatt from tray to ") + "branch bBatt from tray to ".length();
        List<String> offered = Arrays.stream(new LoomCompletion().computeCompletionProposals(viewer, place))
                .map(ICompletionProposal::getDisplayString).toList();
        assertTrue(offered.stream().anyMatch(each -> each.startsWith("batteryTray")), offered.toString());
        int branch = text.indexOf("branch bHeadL") + "branch b".length();
        String hover = new LoomHover().getHoverInfo(viewer, new Region(branch, 0));
        assertTrue(hover != null && hover.contains("bHeadL"), hover);
        int use = text.indexOf("on bHeadL is") + "on b".length();
        IHyperlink[] links = hand.ask(() -> new LoomLinks().detectHyperlinks(viewer, new Region(use, 0), false));
        hand.tell(links[0]::open);
        assertEquals(text.indexOf("bHeadL"), hand.ask(() -> viewer.getSelectedRange().x));
        hand.tell(() -> {
            editor.selectAndReveal(place, 0);
            viewer.getTextWidget().setFocus();
        });
        hand.press(SWT.CTRL, ' ');
        hand.found("the list of proposals", () -> popup(Table.class));
        hand.rest(500);
        hand.picture("completion");
        hand.press(0, SWT.ESC);
        hand.press(0, SWT.ESC);
    }

    @Test
    void hoverKnowsWhatAWireCarriesOnceItsCircuitsAreSolved() throws Exception {
        IProject project = desk.orrin("views");
        ITextEditor editor = desk.open(project.getFile("front-harness.loom"));
        ITextViewer viewer = hand.ask(() -> editor.getAdapter(ITextViewer.class));
        int wire = hand.ask(() -> viewer.getDocument().get()).indexOf("wire a 10 ga from K1:87") + "wire ".length();
        String hover = new LoomHover().getHoverInfo(viewer, new Region(wire, 0));
        assertTrue(hover != null && hover.contains("carries"), hover);
        for (int i = 0; i < 180 && !hover.contains(" A at most"); i++) {
            hand.rest(500);
            hover = new LoomHover().getHoverInfo(viewer, new Region(wire, 0));
        }
        assertTrue(hover.contains(" A at most"), hover);
    }

    @Test
    void aWordOfTheLanguageThatIsUsedAsANameIsNoKeywordAndBlocksAreFolded() throws Exception {
        IProject project = desk.orrin("views");
        ITextEditor editor = desk.open(project.getFile("car-1956.loom"));
        ProjectionViewer viewer = (ProjectionViewer) hand.ask(() -> editor.getAdapter(ITextViewer.class));
        StyledText text = desk.text(editor);
        String line = "wire a 10 ga from battery:minus to ammeter:in";
        int wire = hand.ask(text::getText).indexOf(line);
        hand.tell(() -> editor.selectAndReveal(wire, 0));
        hand.until("the keyword is bold, and the pin of that name is not", () -> bold(text, wire)
                && !bold(text, wire + line.length() - 1));
        hand.tell(() -> viewer.doOperation(ProjectionViewer.COLLAPSE_ALL));
        hand.until("blocks are folded", () -> text.getLineCount() < viewer.getDocument().getNumberOfLines() / 2);
        hand.tell(() -> viewer.doOperation(ProjectionViewer.EXPAND_ALL));
    }

    private static boolean bold(StyledText text, int offset) {
        var style = text.getStyleRangeAtOffset(offset);
        return style != null && style.fontStyle == SWT.BOLD;
    }

    @Test
    void theOutlineShowsWhatIsInTheFile() throws Exception {
        IProject project = desk.orrin("views");
        desk.open(project.getFile("front-harness.loom"));
        Tree tree = hand.found("the outline", () -> Hand.control(hand.window(), Tree.class,
                each -> each.getItemCount() == 1 && each.getItem(0).getText().startsWith("harness front")));
        assertTrue(hand.ask(() -> tree.getItem(0).getItemCount()) > 20);
    }

    @Test
    void aNameIsChangedInAllFilesOfTheProject() throws Exception {
        IProject project = desk.orrin("renaming");
        ITextEditor editor = desk.open(project.getFile("orrin.loom"));
        ITextViewer viewer = hand.ask(() -> editor.getAdapter(ITextViewer.class));
        int place = hand.ask(() -> viewer.getDocument().get()).indexOf("batteryTray");
        hand.tell(() -> {
            editor.selectAndReveal(place + 2, 0);
            viewer.getTextWidget().setFocus();
        });
        hand.press(SWT.ALT | SWT.SHIFT, 'r');
        Shell dialog = hand.found("the question for a name", () -> hand.shell("Rename"));
        Text name = hand.found("its field", () -> Hand.control(dialog, Text.class, Text::isEnabled));
        assertEquals("batteryTray", hand.ask(name::getText));
        hand.tell(() -> {
            name.setFocus();
            name.selectAll();
        });
        hand.type("tray1");
        hand.until("it is typed", () -> name.getText().equals("tray1"));
        hand.press(0, SWT.CR);
        hand.until("the platform has the new name", () -> viewer.getDocument().get().contains("place tray1 "));
        hand.until("other files have it", () -> Desk.truth(project).orElseThrow().project().text("front-harness.loom")
                .orElseThrow().contains("branch bBatt from tray to tray1 285 mm"));
        hand.until("nothing is wrong with it", () -> Desk.truth(project).orElseThrow().report().counting().stream()
                .noneMatch(each -> each.sentence().contains("batteryTray")));
    }

    private boolean says(ITextViewer viewer, String words) {
        var model = ((ISourceViewer) viewer).getAnnotationModel();
        for (var all = model.getAnnotationIterator(); all.hasNext();) {
            Annotation each = all.next();
            if (each.getText() != null && each.getText().contains(words)) {
                return true;
            }
        }
        return false;
    }

    private <T extends org.eclipse.swt.widgets.Control> java.util.Optional<T> popup(Class<T> type) {
        for (Shell shell : hand.display().getShells()) {
            if (shell.isVisible() && shell.getText().isEmpty()) {
                var found = Hand.control(shell, type, each -> true);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return java.util.Optional.empty();
    }

    private static IMarker[] markers(IFile file) {
        try {
            return file.findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_ZERO);
        } catch (CoreException e) {
            throw new IllegalStateException(e);
        }
    }
}
