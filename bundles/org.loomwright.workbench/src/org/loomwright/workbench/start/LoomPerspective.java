// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.start;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;
import org.loomwright.workbench.Shared;

/** The text in the middle, the files and the vehicles at its left, the truth below and at its right. */
public final class LoomPerspective implements IPerspectiveFactory {

    /** Id of the perspective. */
    public static final String ID = Shared.ID + ".perspective";

    private static final String VIEW = Shared.ID + ".view.";
    private static final String EXPLORER = "org.eclipse.ui.navigator.ProjectExplorer";

    @Override
    public void createInitialLayout(IPageLayout layout) {
        String editor = layout.getEditorArea();
        layout.addView(EXPLORER, IPageLayout.LEFT, 0.2f, editor);
        layout.addView(VIEW + "vehicles", IPageLayout.BOTTOM, 0.5f, EXPLORER);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.62f, editor);
        below.addView(VIEW + "findings");
        below.addView(VIEW + "fit");
        below.addView(VIEW + "years");
        below.addView(VIEW + "harness");
        below.addView(VIEW + "formboard");
        below.addView(VIEW + "circuit");
        below.addView(IPageLayout.ID_PROBLEM_VIEW);
        below.addPlaceholder(IPageLayout.ID_PROGRESS_VIEW);
        below.addPlaceholder(VIEW + "references");
        below.addPlaceholder(VIEW + "guide");
        layout.addView(IPageLayout.ID_OUTLINE, IPageLayout.RIGHT, 0.8f, editor);
        for (String view : new String[] {"vehicles", "findings", "fit", "years", "harness", "formboard",
            "circuit"}) {
            layout.addShowViewShortcut(VIEW + view);
        }
        for (String view : new String[] {"harness", "formboard", "circuit"}) {
            layout.addShowInPart(VIEW + view);
        }
        layout.addShowInPart(EXPLORER);
        layout.addShowInPart(IPageLayout.ID_OUTLINE);
        layout.addShowViewShortcut(VIEW + "references");
        layout.addShowViewShortcut(VIEW + "guide");
        layout.addShowViewShortcut(EXPLORER);
        layout.addShowViewShortcut(IPageLayout.ID_PROBLEM_VIEW);
        layout.addShowViewShortcut(IPageLayout.ID_OUTLINE);
        layout.addNewWizardShortcut(Shared.ID + ".newProject");
        layout.addNewWizardShortcut(Shared.ID + ".newDrawing");
        layout.addPerspectiveShortcut(ID);
    }
}
