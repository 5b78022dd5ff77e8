// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.workbench.project.FindingMarkers;

/**
 * What a workbench does that was started in a process of its own ({@link OtherWorkbench}): works until it is killed,
 * says what it found, or shows itself. Does nothing in any other.
 */
public final class Session implements IStartup {

    /** The property that says what to do. */
    static final String PROPERTY = "loomwright.tests.session";
    static final String WORK = "work";
    static final String LOOK = "look";
    /** Shows the Orrin in the theme that it was started with, and says what can be read. */
    static final String SHOW = "show";
    /** Opens the Orrin, waits for its findings, and ends as a person ends it. */
    static final String LEAVE = "leave";
    static final String READY = "the session is ready";
    static final String PROJECT = "kept";
    /** A file that is saved with a mistake. */
    static final String SAVED = "saved.loom";
    /** A file into which something is typed that is not saved. */
    static final String TYPED = "platform.loom";
    static final String TEXT = "// typed and not saved\n";

    private final Desk desk = System.getProperty(PROPERTY) == null ? null : new Desk();

    @Override
    public void earlyStartup() {
        String what = System.getProperty(PROPERTY, "");
        try {
            if (what.equals(WORK)) {
                work();
            } else if (what.equals(LOOK)) {
                look();
            } else if (what.equals(SHOW)) {
                new Readable(desk).say();
                say(READY);
            } else if (what.equals(LEAVE)) {
                desk.open(desk.orrin("orrin").getFile("front-harness.loom"));
                desk.hand().rest(3_000);
                say(READY);
                desk.hand().tell(() -> PlatformUI.getWorkbench().close());
            }
        } catch (CoreException | RuntimeException | Error e) {
            say("failed: " + e);
        }
    }

    private void work() throws CoreException {
        IProject project = desk.empty(PROJECT);
        write(project.getFile(TYPED), "platform orrin \"Small\" {\n    place here\n}\n");
        write(project.getFile(SAVED), "drawing saved of orrin {\n}\n");
        ITextEditor editor = desk.open(project.getFile(SAVED));
        desk.hand().tell(() -> {
            IDocument document = document(editor);
            try {
                document.replace(document.get().indexOf("of orrin"), "of orrin".length(), "of orin");
            } catch (BadLocationException e) {
                throw new IllegalStateException(e);
            }
            editor.doSave(null);
        });
        desk.hand().until("the mistake is marked", () -> marked(project.getFile(SAVED)));
        ITextEditor other = desk.open(project.getFile(TYPED));
        desk.hand().tell(() -> document(other).set(TEXT + document(other).get()));
        desk.hand().until("what is typed is kept", () -> {
            String[] kept = Platform.getStateLocation(Platform.getBundle(Shared.ID)).append("unsaved").toFile().list();
            return kept != null && kept.length == 1;
        });
        say(READY);
    }

    private void look() {
        IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(PROJECT);
        say("project " + project.isAccessible());
        ITextEditor typed = desk.open(project.getFile(TYPED));
        Shell question = desk.hand().found("what was typed is offered", () -> desk.hand().shell("Not Saved"));
        desk.hand().tell(question::forceActive);
        desk.hand().picture("not-saved");
        desk.hand().press(0, SWT.CR);
        desk.hand().until("it is taken over", () -> document(typed).get().startsWith(TEXT));
        say("typed text " + typed.isDirty());
        desk.hand().until("what was saved is marked", () -> marked(project.getFile(SAVED)));
        say("saved mistake true");
        IFile outside = project.getFile("outside.loom");
        desk.hand().until("what was written meanwhile is found and marked", () -> marked(outside));
        say("outside mistake true");
        say(READY);
    }

    private static void write(IFile file, String text) throws CoreException {
        file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), true, null);
    }

    private static IDocument document(ITextEditor editor) {
        return editor.getDocumentProvider().getDocument(editor.getEditorInput());
    }

    private static boolean marked(IFile file) {
        try {
            return file.exists() && Arrays.stream(file.findMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_ZERO))
                    .anyMatch(each -> Optional.ofNullable(each.getAttribute(IMarker.MESSAGE, null)).orElse("")
                            .contains("orin"));
        } catch (CoreException e) {
            return false;
        }
    }

    private static void say(String words) {
        System.out.println(words);
        System.out.flush();
    }
}
