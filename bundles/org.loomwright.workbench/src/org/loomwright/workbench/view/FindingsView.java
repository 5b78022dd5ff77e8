// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IAction;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.ISharedImages;
import org.eclipse.ui.PlatformUI;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.truth.Truth;

/** The findings for the chosen vehicles, the worst first, each with how its figures came about. */
public final class FindingsView extends TruthView<FindingList> {

    private TableViewer table;
    private Text detail;
    private volatile boolean inherited;
    private volatile boolean accepted;

    @Override
    protected FindingList work(Truth truth, Choice choice, IProgressMonitor monitor) {
        return FindingList.of(truth, choice, inherited, accepted);
    }

    @Override
    protected String words(FindingList now) {
        return now.words();
    }

    @Override
    protected void create(Composite parent) {
        org.eclipse.swt.custom.SashForm sash = new org.eclipse.swt.custom.SashForm(parent, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        table = new TableViewer(sash, SWT.FULL_SELECTION | SWT.BORDER);
        table.setContentProvider(ArrayContentProvider.getInstance());
        table.getTable().setHeaderVisible(true);
        table.getTable().getAccessible().addAccessibleListener(Names.of("Findings"));
        column("Weight", 90, finding -> FindingList.weight(finding), true);
        column("What", 430, finding -> finding.subject().isEmpty() ? finding.sentence()
                : finding.subject() + ": " + finding.sentence(), false);
        column("Vehicles", 200, finding -> finding.affected().map(each -> each.every() ? "every vehicle"
                : each.words()).orElse(""), false);
        column("Rule", 150, Finding::rule, false);
        column("Place", 150, finding -> finding.place().span().file().isEmpty() ? ""
                : finding.place().span().file() + ":" + finding.place().span().line(), false);
        detail = new Text(sash, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER);
        detail.getAccessible().addAccessibleListener(Names.of("How the finding came about"));
        sash.setWeights(3, 1);
        table.addSelectionChangedListener(event -> selected().forEach(finding ->
                detail.setText(FindingList.details(finding))));
        table.addOpenListener(event -> selected().forEach(finding -> open(finding.place().span())));
        getViewSite().getActionBars().getMenuManager().add(toggle("Show inherited findings",
                "Show what is about the factory's work, too", on -> inherited = on));
        getViewSite().getActionBars().getMenuManager().add(toggle("Show accepted findings",
                "Show what somebody accepted, too", on -> accepted = on));
        getSite().setSelectionProvider(table);
    }

    @Override
    protected void show(FindingList now) {
        List<String> kept = selected().stream().map(Finding::fingerprint).toList();
        table.setInput(now.findings());
        now.findings().stream().filter(finding -> kept.contains(finding.fingerprint())).findFirst()
                .ifPresent(finding -> table.setSelection(new StructuredSelection(finding)));
        if (selected().isEmpty()) {
            detail.setText("");
        }
    }

    @Override
    public void setFocus() {
        table.getControl().setFocus();
    }

    private List<Finding> selected() {
        return table.getStructuredSelection().stream().filter(Finding.class::isInstance).map(Finding.class::cast)
                .toList();
    }

    private void column(String title, int width, java.util.function.Function<Finding, String> words, boolean icon) {
        TableViewerColumn column = new TableViewerColumn(table, SWT.NONE);
        column.getColumn().setText(title);
        column.getColumn().setWidth(width);
        column.setLabelProvider(new ColumnLabelProvider() {

            @Override
            public String getText(Object element) {
                return words.apply((Finding) element);
            }

            @Override
            public Image getImage(Object element) {
                return icon ? image((Finding) element) : null;
            }
        });
    }

    private static Image image(Finding finding) {
        String name = switch (finding.severity()) {
            case ERROR -> ISharedImages.IMG_OBJS_ERROR_TSK;
            case WARNING -> ISharedImages.IMG_OBJS_WARN_TSK;
            case NOTE -> ISharedImages.IMG_OBJS_INFO_TSK;
        };
        return PlatformUI.getWorkbench().getSharedImages().getImage(name);
    }

    private IAction toggle(String title, String tip, java.util.function.Consumer<Boolean> set) {
        Action action = new Action(title, IAction.AS_CHECK_BOX) {

            @Override
            public void run() {
                set.accept(isChecked());
                again();
            }
        };
        action.setToolTipText(tip);
        return action;
    }
}
