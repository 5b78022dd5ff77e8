// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.TableCursor;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.events.SelectionEvent;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;

/**
 * A table of cells that can be walked with the arrow keys. Above it a box to choose what is shown, below it what is to
 * be said about the cell that the cursor is on. Enter or a double click opens the cell.
 */
final class Grid {

    private static final int FIRST = 210;
    private static final int OTHER = 120;

    private final Composite bar;
    private final Combo box;
    private final Table table;
    private final TableCursor cursor;
    private final Text line;
    private final BiFunction<Integer, Integer, String> detail;
    private final int align;
    private List<String> heads = List.of();

    /**
     * @param align  how the cells are aligned: {@link SWT#LEFT} or {@link SWT#RIGHT}
     * @param what   what the box chooses, one word
     * @param name   the name of the table for screen readers
     * @param chosen hears what is chosen in the box
     * @param open   opens the cell in a row and a column
     * @param detail says something about the cell in a row and a column
     */
    Grid(Composite parent, int align, String what, String name, Consumer<String> chosen,
            BiConsumer<Integer, Integer> open, BiFunction<Integer, Integer, String> detail) {
        this.align = align;
        this.detail = detail;
        bar = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(3).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        new Label(bar, SWT.NONE).setText(what);
        box = new Combo(bar, SWT.READ_ONLY);
        box.getAccessible().addAccessibleListener(Names.of(what));
        box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> chosen.accept(box.getText())));
        table = new Table(parent, SWT.FULL_SELECTION | SWT.BORDER | SWT.H_SCROLL | SWT.V_SCROLL);
        table.setHeaderVisible(true);
        table.setLinesVisible(true);
        table.getAccessible().addAccessibleListener(Names.of(name));
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table);
        cursor = new TableCursor(table, SWT.NONE);
        cursor.addSelectionListener(new SelectionListener() {

            @Override
            public void widgetSelected(SelectionEvent event) {
                say();
            }

            @Override
            public void widgetDefaultSelected(SelectionEvent event) {
                openCell(open);
            }
        });
        cursor.addMouseListener(MouseListener.mouseDoubleClickAdapter(event -> openCell(open)));
        line = new Text(parent, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI);
        line.getAccessible().addAccessibleListener(Names.of("About the cell"));
        GridDataFactory.fillDefaults().grab(true, false).hint(SWT.DEFAULT, 2 * line.getLineHeight()).applyTo(line);
    }

    /** Where more controls can be put beside the box. */
    Composite bar() {
        return bar;
    }

    void setFocus() {
        (table.getItemCount() > 0 ? cursor : box).setFocus();
    }

    void choices(List<String> names, String shown) {
        if (!names.equals(List.of(box.getItems()))) {
            box.setItems(names.toArray(String[]::new));
            box.requestLayout();
        }
        box.select(names.indexOf(shown));
    }

    void columns(String first, List<String> others, List<String> tips) {
        if (!others.equals(heads) || table.getColumnCount() == 0) {
            heads = List.copyOf(others);
            for (TableColumn column : table.getColumns()) {
                column.dispose();
            }
            column(first, FIRST, SWT.LEFT);
            others.forEach(each -> column(each, OTHER, align));
        }
        for (int i = 0; i < tips.size(); i++) {
            table.getColumn(i + 1).setToolTipText(tips.get(i));
        }
    }

    /** Sets the rows; what fills them is called for each, with its number. */
    void rows(int count, BiConsumer<TableItem, Integer> fill) {
        int row = cursor.getRow() == null ? -1 : table.indexOf(cursor.getRow());
        int column = cursor.getColumn();
        table.setRedraw(false);
        table.setItemCount(count);
        for (int i = 0; i < count; i++) {
            TableItem item = table.getItem(i);
            item.setImage((org.eclipse.swt.graphics.Image) null);
            fill.accept(item, i);
        }
        table.setRedraw(true);
        boolean there = row >= 0 && row < count && column < table.getColumnCount();
        cursor.setVisible(count > 0);
        if (count > 0) {
            cursor.setSelection(there ? row : 0, there ? column : 0);
            say();
        } else {
            line.setText("");
        }
    }

    private void say() {
        if (cursor.getRow() != null) {
            line.setText(detail.apply(table.indexOf(cursor.getRow()), cursor.getColumn()));
        }
    }

    private void openCell(BiConsumer<Integer, Integer> open) {
        if (cursor.getRow() != null) {
            open.accept(table.indexOf(cursor.getRow()), cursor.getColumn());
        }
    }

    private void column(String title, int width, int style) {
        TableColumn column = new TableColumn(table, style);
        column.setText(title);
        column.setWidth(width);
    }
}
