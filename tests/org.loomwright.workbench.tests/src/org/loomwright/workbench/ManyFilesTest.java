// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.project.FindingMarkers;

/** A project of 5,000 files: built, one of them opened, a mistake typed, saved, followed and mended. */
class ManyFilesTest {

    private static final int FILES = 5_000;

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();
    private IProject project;

    @AfterEach
    void away() throws CoreException {
        desk.closeAll();
        project.delete(true, true, null);
    }

    /** Every hundredth names a place that there is not, so that there are marks to be left alone. */
    private static String drawing(int number) {
        return "drawing d" + number + " of p when year = " + (1_901 + number % 100) + " {\n    datum "
                + (number % 100 == 50 ? "bax" : "box") + "\n    circuit 1 BK {\n        splice S at box\n    }\n}\n";
    }

    private Set<Long> marks() throws CoreException {
        return Arrays.stream(project.findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_INFINITE))
                .filter(ManyFilesTest::isError).map(IMarker::getId).collect(Collectors.toSet());
    }

    @Test
    void oneIsWorkedOnAndTheOthersAreLeftAlone() throws Exception {
        project = desk.empty("many");
        Path folder = project.getLocation().toFile().toPath();
        Files.writeString(folder.resolve("p.loom"), "platform p {\n    years 1901 .. 2000\n    place box\n}\n");
        for (int i = 0; i < FILES; i++) {
            Path part = Files.createDirectories(folder.resolve("part" + i / 1_000));
            Files.writeString(part.resolve("d" + i + ".loom"), drawing(i));
        }
        project.refreshLocal(IResource.DEPTH_INFINITE, null);
        project.build(IncrementalProjectBuilder.FULL_BUILD, null);
        // holding 5,000 drawings of one position each to each would take all memory
        desk.view("years");
        assertEquals(FILES, Desk.truth(project).orElseThrow().project().wirings().size());
        Set<Long> before = marks();
        assertEquals(FILES / 100, before.size());

        IFile file = project.getFile("part4/d4321.loom");
        ITextEditor editor = desk.open(file);
        hand.until("the view of the years says why it is empty", () -> Hand.control(hand.window(), Label.class, each ->
                each.getText().startsWith("5000 drawings fill one position")).isPresent());
        StyledText text = desk.text(editor);
        int place = drawing(4_321).indexOf("box");
        hand.front();
        hand.tell(() -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(place, 0);
            text.setFocus();
        });
        hand.until("the editor has the keys", text::isFocusControl);
        hand.type("x");
        hand.press(SWT.CTRL, 's');
        hand.until("the mistake is marked", () -> marked(file));
        Set<Long> after = marks();
        assertEquals(before.size() + 1, after.size());
        assertTrue(after.containsAll(before), "no mark of another file was set again");

        hand.press(0, SWT.BS);
        hand.press(SWT.CTRL, 's');
        hand.until("it is mended", () -> !marked(file));
        hand.tell(() -> editor.selectAndReveal(place + 1, 0));
        hand.press(0, SWT.F3);
        hand.until("F3 opens where the place is declared", () -> "p.loom".equals(editor.getSite().getPage()
                .getActiveEditor().getTitle()));
    }

    private static boolean isError(IMarker marker) {
        return marker.getAttribute(IMarker.SEVERITY, -1) == IMarker.SEVERITY_ERROR;
    }

    private static boolean marked(IFile file) {
        try {
            return Arrays.stream(file.findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_ZERO))
                    .anyMatch(ManyFilesTest::isError);
        } catch (CoreException e) {
            return false;
        }
    }
}
