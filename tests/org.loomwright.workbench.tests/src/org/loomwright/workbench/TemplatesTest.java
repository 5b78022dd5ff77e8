// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.Document;
import org.eclipse.jface.text.templates.TemplateBuffer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.Services;
import org.loomwright.ide.complete.Templates;
import org.loomwright.ide.project.Moment;
import org.loomwright.workbench.editor.LoomTemplates;
import org.loomwright.workbench.truth.ProjectRoom;

/** The templates of the language services in the editor; that each of them reads is tested there. */
class TemplatesTest {

    private static final String FILE = "templates.loom";
    private static final String TEXT = "platform p {\n    \n}\n\ndrawing d of p {\n    \n    circuit 1 {\n        \n"
            + "    }\n}\n";

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @AfterEach
    void leaveNothing() throws CoreException {
        desk.closeAll();
        for (String each : new String[] {"Gaps", "Filling"}) {
            ResourcesPlugin.getWorkspace().getRoot().getProject(each).delete(true, true, null);
        }
    }

    @Test
    void eachIsFilledInAsTheServicesSay() throws Exception {
        IProject project = desk.empty("Gaps");
        ProjectRoom room = Shared.rooms().room(project).orElseThrow();
        room.take(Map.of(FILE, Optional.of(TEXT.getBytes(StandardCharsets.UTF_8))), new NullProgressMonitor());
        Moment moment = room.moment();
        int seen = 0;
        for (int at = 0; at <= TEXT.length(); at++) {
            for (Templates.Fitting each : Services.templates(moment, FILE, at)) {
                if (each.where().length() > 0) {
                    continue;
                }
                TemplateBuffer filled = LoomTemplates.context(new Document(TEXT), each.where()).evaluate(
                        LoomTemplates.template(each.template(), "  "));
                assertEquals(each.template().text().replace("\n", "\n  "), filled.getString());
                seen++;
            }
        }
        assertTrue(seen > 50, seen + " templates");
    }

    @Test
    void oneIsChosenAndItsFieldsAreFilledIn() throws Exception {
        IProject project = desk.empty("Filling");
        IFile file = project.getFile(FILE);
        String started = TEXT.replace("    \n    circuit", "    trunk\n    circuit");
        file.create(started.getBytes(StandardCharsets.UTF_8), true, false, null);
        ITextEditor editor = desk.open(file);
        StyledText text = desk.text(editor);
        hand.front();
        hand.tell(() -> {
            editor.setFocus();
            editor.selectAndReveal(started.indexOf("trunk") + "trunk".length(), 0);
            text.setFocus();
        });
        hand.until("the editor has the keys", text::isFocusControl);
        hand.press(SWT.CTRL, ' ');
        Table offered = hand.found("the word and its template are offered", () -> Arrays.stream(
                hand.display().getShells()).filter(shell -> shell.isVisible() && shell.getText().isEmpty())
                .flatMap(shell -> Hand.control(shell, Table.class, table -> table.getItemCount() == 2).stream())
                .findFirst());
        hand.tell(() -> {
            offered.setFocus();
            offered.setSelection(1);
        });
        hand.press(0, SWT.CR);
        hand.until("the template stands in the text", () -> text.getText().contains("    trunk name {"));
        hand.tell(text::setFocus);
        hand.type("main");
        hand.until("its first field is filled in", () -> text.getText().contains("    trunk main {"));
    }
}
