// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Display;
import org.loomwright.workbench.truth.Rooms;

/** Asks whether what was typed before the workbench was killed is to be taken over. */
public final class UnsavedOffer implements Rooms.Offer {

    @Override
    public void make(ITextFileBuffer buffer, IFile file, String text, Runnable drop) {
        Display display = Display.getDefault();
        display.asyncExec(() -> {
            int answer = MessageDialog.open(MessageDialog.QUESTION, display.getActiveShell(), "Not Saved",
                    file.getName() + " was not saved when the workbench ended. Take over what was typed into it?"
                    + " It replaces the text that is shown, is not saved by that, and can be undone.", 0,
                    "&Take over", "&Throw away", "&Later");
            if (answer == 0) {
                buffer.getDocument().set(text);
            } else if (answer == 1) {
                drop.run();
            }
        });
    }
}
