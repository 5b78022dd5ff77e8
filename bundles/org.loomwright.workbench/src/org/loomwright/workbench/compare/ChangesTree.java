// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.compare.CompareViewerPane;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.ToolBarManager;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.layout.TreeColumnLayout;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.ColumnWeightData;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.jface.viewers.TreeViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.loomwright.app.print.CompareText;
import org.loomwright.app.print.Palette;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.change.Change;

/** The controls of the tree of changes. */
final class ChangesTree {

    /** Shares of the width in percent, and the least widths in pixels. */
    private static final ColumnWeightData WIDE = new ColumnWeightData(68, 220);
    private static final ColumnWeightData NARROW = new ColumnWeightData(32, 120);

    /** The line of consequences takes as many lines as the width asks for, and asks for no width of its own. */
    private static final int LEAST = 100;

    private final ChangesViewer owner;
    private final Composite all;
    private final Label line;
    private final TreeColumnLayout columns = new TreeColumnLayout();
    private final TreeViewer tree;
    private final Action toLeft;
    private final Action toRight;
    private final List<Action> filters;

    ChangesTree(Composite parent, ChangesViewer owner) {
        this.owner = owner;
        all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(all);
        toLeft = take(true);
        toRight = take(false);
        filters = Arrays.stream(Aspect.values()).map(this::filter).toList();
        ToolBarManager bar = CompareViewerPane.getToolBarManager(parent);
        if (bar != null) {
            bar.removeAll();
            bar.add(button());
            bar.add(shown(toLeft));
            bar.add(shown(toRight));
            bar.update(true);
        }
        line = new Label(all, SWT.WRAP);
        line.setText("Comparing ...");
        GridDataFactory.fillDefaults().grab(true, false).hint(LEAST, SWT.DEFAULT).applyTo(line);
        Composite sheet = new Composite(all, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sheet);
        sheet.setLayout(columns);
        tree = new TreeViewer(sheet, SWT.FULL_SELECTION | SWT.BORDER);
        tree.getTree().setHeaderVisible(true);
        tree.getTree().getAccessible().addAccessibleListener(new AccessibleAdapter() {

            @Override
            public void getName(AccessibleEvent event) {
                event.result = "Changes and what follows";
            }
        });
        tree.setContentProvider(new Content());
        column("Change", WIDE, true);
        column("Vehicles", NARROW, false);
        menu();
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
        say(new CompareText(Palette.PLAIN, Integer.MAX_VALUE, true).verdict(changes.compared()).strip());
        tree.setInput(changes);
        tree.expandAll();
        enable();
    }

    void say(String words) {
        line.setText(words.replace("&", "&&"));
        line.setToolTipText(words);
        all.layout();
    }

    private Action take(boolean left) {
        Action action = new Action("Take to the " + owner.side(left)) {

            @Override
            public void run() {
                selected().ifPresent(change -> owner.take(change, left));
            }
        };
        action.setToolTipText("Takes the chosen change over to the " + owner.side(left) + " side");
        return action;
    }

    private static ActionContributionItem shown(Action action) {
        ActionContributionItem item = new ActionContributionItem(action);
        item.setMode(ActionContributionItem.MODE_FORCE_TEXT);
        return item;
    }

    private Action filter(Aspect aspect) {
        Action action = new Action(aspect.words() + " (" + aspect.attention().words() + ")", IAction.AS_CHECK_BOX) {

            @Override
            public void run() {
                owner.filter(aspect, isChecked());
            }
        };
        action.setChecked(true);
        return action;
    }

    /** A button with a menu of the classes of changes that can be shown or hidden. */
    private ActionContributionItem button() {
        MenuManager menu = new MenuManager();
        filters.forEach(menu::add);
        Action button = new Action("Shown", IAction.AS_PUSH_BUTTON) {

            @Override
            public void run() {
                menu.createContextMenu(all).setVisible(true);
            }
        };
        button.setToolTipText("Which changes are shown");
        all.addDisposeListener(event -> menu.dispose());
        return shown(button);
    }

    /** The menu of the tree: all that the buttons do, for whoever uses the keyboard. */
    private void menu() {
        MenuManager menu = new MenuManager();
        menu.add(toLeft);
        menu.add(toRight);
        MenuManager shown = new MenuManager("&Shown");
        filters.forEach(shown::add);
        menu.add(shown);
        tree.getTree().setMenu(menu.createContextMenu(tree.getTree()));
        all.addDisposeListener(event -> menu.dispose());
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

    private void column(String title, ColumnWeightData width, boolean first) {
        TreeViewerColumn column = new TreeViewerColumn(tree, SWT.NONE);
        column.getColumn().setText(title);
        columns.setColumnData(column.getColumn(), width);
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
