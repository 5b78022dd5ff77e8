// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.guide;

import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.SWTError;
import org.eclipse.swt.browser.Browser;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.part.ViewPart;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.guide.GuidePages.Page;
import org.loomwright.workbench.view.Names;

/**
 * The guide. A page is shown beside the list of all where the system has a browser that can be part of a window; else
 * Enter opens it in the browser of the user.
 */
public final class GuideView extends ViewPart {

    /** Id of the view. */
    public static final String ID = Shared.ID + ".view.guide";

    private List<Page> pages = List.of();
    private Label line;
    private Table table;
    private Optional<Browser> browser = Optional.empty();

    @Override
    public void createPartControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(2, 2).applyTo(all);
        line = new Label(all, SWT.WRAP);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        SashForm sash = new SashForm(all, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        table = new Table(sash, SWT.BORDER | SWT.SINGLE | SWT.FULL_SELECTION);
        table.getAccessible().addAccessibleListener(Names.of("Pages of the guide"));
        pages = GuidePages.all();
        for (Page each : pages) {
            new TableItem(table, SWT.NONE).setText(each.title());
        }
        try {
            browser = Optional.of(new Browser(sash, SWT.NONE));
            sash.setWeights(1, 3);
        } catch (SWTError e) {
            browser = Optional.empty();
        }
        line.setText(pages.isEmpty() ? "This build has no guide; its pages are the files in the folder docs."
                : browser.isPresent() ? "Choose a page." : "Enter or a double click opens a page in your browser.");
        table.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> display()));
        table.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> launch()));
        if (!pages.isEmpty()) {
            table.setSelection(0);
            display();
        }
    }

    /** Chooses a page and shows it; the first when there is none of that name. */
    void choose(String file) {
        if (!pages.isEmpty()) {
            table.setSelection(IntStream.range(0, pages.size()).filter(i -> pages.get(i).file().equals(file))
                    .findFirst().orElse(0));
            table.showSelection();
            display();
        }
    }

    private Optional<URI> location() {
        int chosen = table.getSelectionIndex();
        return chosen < 0 ? Optional.empty() : GuidePages.location(pages.get(chosen));
    }

    private void display() {
        browser.ifPresent(shown -> location().ifPresent(page -> shown.setUrl(page.toString())));
    }

    private void launch() {
        location().filter(page -> browser.isEmpty() && !Program.launch(page.toString())).ifPresent(page ->
                line.setText("No browser could be started. The page is " + page.getPath()));
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
