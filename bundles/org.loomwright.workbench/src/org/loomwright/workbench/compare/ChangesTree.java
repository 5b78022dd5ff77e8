// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.jface.viewers.TreeViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.loomwright.app.print.CompareText;
import org.loomwright.app.print.Palette;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.change.Change;

/** The controls of the tree of changes. */
final class ChangesTree {

    private static final int WIDE = 640;
    private static final int NARROW = 300;

    private final ChangesViewer owner;
    private final Composite all;
    private final Label line;
    private final TreeViewer tree;
    private final Button toLeft;
    private final Button toRight;

    ChangesTree(Composite parent, ChangesViewer owner) {
        this.owner = owner;
        all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(all);
        Composite bar = new Composite(all, SWT.NONE);
        bar.setLayout(new RowLayout());
        for (Aspect aspect : Aspect.values()) {
            Button button = new Button(bar, SWT.CHECK);
            button.setText(aspect.words());
            button.setToolTipText(aspect.attention().words());
            button.setSelection(true);
            button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                    owner.filter(aspect, button.getSelection())));
        }
        toRight = button(bar, "Take over to the &right", false);
        toLeft = button(bar, "Take over to the &left", true);
        line = new Label(all, SWT.WRAP);
        line.setText("Comparing ...");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        tree = new TreeViewer(all, SWT.FULL_SELECTION | SWT.BORDER);
        tree.getTree().setHeaderVisible(true);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(tree.getControl());
        tree.getTree().getAccessible().addAccessibleListener(new AccessibleAdapter() {

            @Override
            public void getName(AccessibleEvent event) {
                event.result = "Changes and what follows";
            }
        });
        tree.setContentProvider(new Content());
        column("Change", WIDE, true);
        column("Vehicles", NARROW, false);
        tree.addSelectionChangedListener(event -> {
            selected().ifPresent(owner::reveal);
            enable();
        });
        enable();
    }

    Control control() {
        return all;
    }

    void show(Changes changes) {
        line.setText(new CompareText(Palette.PLAIN, Integer.MAX_VALUE, true).verdict(changes.compared()).strip()
                .replace("&", "&&"));
        line.requestLayout();
        tree.setInput(changes);
        tree.expandAll();
        enable();
    }

    void say(String words) {
        line.setText(words.replace("&", "&&"));
        line.requestLayout();
    }

    private Button button(Composite bar, String title, boolean left) {
        Button button = new Button(bar, SWT.PUSH);
        button.setText(title);
        button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event ->
                selected().ifPresent(change -> owner.take(change, left))));
        return button;
    }

    private void enable() {
        Optional<Change> change = selected();
        toLeft.setEnabled(change.filter(each -> owner.canTake(each, true)).isPresent());
        toRight.setEnabled(change.filter(each -> owner.canTake(each, false)).isPresent());
    }

    private Optional<Change> selected() {
        return tree.getStructuredSelection().getFirstElement() instanceof Changes.Entry.Changed changed
                ? Optional.of(changed.change()) : Optional.empty();
    }

    private void column(String title, int width, boolean first) {
        TreeViewerColumn column = new TreeViewerColumn(tree, SWT.NONE);
        column.getColumn().setText(title);
        column.getColumn().setWidth(width);
        column.setLabelProvider(new ColumnLabelProvider() {

            @Override
            public String getText(Object element) {
                if (element instanceof Changes.Group group) {
                    return first ? group.title() : "";
                }
                Changes.Entry entry = (Changes.Entry) element;
                return first ? entry.words() : entry.vehicles();
            }

            @Override
            public String getToolTipText(Object element) {
                return getText(element);
            }
        });
    }

    private static final class Content implements ITreeContentProvider {

        @Override
        public Object[] getElements(Object input) {
            return input instanceof Changes changes ? changes.groups().toArray() : new Object[0];
        }

        @Override
        public Object[] getChildren(Object parent) {
            return parent instanceof Changes.Group group ? group.entries().toArray() : new Object[0];
        }

        @Override
        public Object getParent(Object element) {
            return null;
        }

        @Override
        public boolean hasChildren(Object element) {
            return element instanceof Changes.Group;
        }
    }
}
