// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.loomwright.harness.Span;
import org.loomwright.workbench.Shared;

/** Every word of a project that names one thing, as they were when somebody asked; Enter opens the line. */
public final class ReferencesView extends ViewPart {

    /** Id of the view. */
    public static final String ID = Shared.ID + ".view.references";

    private Label line;
    private Table table;
    private IProject project;
    private List<Row> rows = List.of();

    /**
     * One of the words.
     *
     * @param span     the word
     * @param line     its line, counted from 1
     * @param word     the word itself
     * @param text     the line around it
     * @param declares whether it gives the name
     */
    public record Row(Span span, int line, String word, String text, boolean declares) {
    }

    /** Shows words of a project and gives the view the keys. On the thread that draws. */
    public static void show(IWorkbenchPage page, IProject project, List<Row> rows) {
        try {
            ((ReferencesView) page.showView(ID)).fill(project, rows);
        } catch (PartInitException e) {
            ILog.get().error("the references cannot be shown", e);
        }
    }

    @Override
    public void createPartControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().margins(2, 2).applyTo(all);
        line = new Label(all, SWT.WRAP);
        line.setText("References in an editor, Ctrl+Shift+G, lists here what names the same as the word at the"
                + " cursor.");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        table = new Table(all, SWT.BORDER | SWT.FULL_SELECTION | SWT.SINGLE);
        table.setHeaderVisible(true);
        table.getAccessible().addAccessibleListener(Names.of("References"));
        column("Place", 240);
        column("What", 90);
        column("Line", 620);
        table.addSelectionListener(SelectionListener.widgetDefaultSelectedAdapter(event -> {
            Span span = rows.get(table.indexOf((TableItem) event.item)).span();
            Places.open(getSite().getPage(), project, span);
        }));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table);
    }

    private void column(String name, int width) {
        TableColumn column = new TableColumn(table, SWT.NONE);
        column.setText(name);
        column.setWidth(width);
    }

    private void fill(IProject of, List<Row> now) {
        project = of;
        rows = List.copyOf(now);
        long files = now.stream().map(each -> each.span().file()).distinct().count();
        line.setText("'" + now.getFirst().word().replace("&", "&&") + "' is named " + now.size() + (now.size() == 1
                ? " time" : " times") + " in " + files + (files == 1 ? " file" : " files") + " of " + of.getName()
                + ". Enter opens the line.");
        table.removeAll();
        for (Row each : now) {
            TableItem item = new TableItem(table, SWT.NONE);
            item.setText(new String[] {each.span().file() + ":" + each.line(), each.declares() ? "declared" : "used",
                each.text()});
        }
        table.setSelection(0);
        table.setFocus();
        line.requestLayout();
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
