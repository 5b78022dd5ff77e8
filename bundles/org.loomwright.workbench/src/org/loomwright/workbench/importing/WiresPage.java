// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.importing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.loomwright.app.BadCall;
import org.loomwright.app.importing.Field;
import org.loomwright.app.importing.ImportWires;
import org.loomwright.app.importing.ImportWires.Imported;
import org.loomwright.app.importing.WireTable;
import org.loomwright.harness.link.Colours;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Truth;
import org.loomwright.workbench.view.Names;

/** Asks for the list, what its columns are and what the drawing is called; shows what becomes of each row. */
final class WiresPage extends WizardPage {

    private static final String NONE = "(none)";

    private final IProject project;
    private final Map<Field, Combo> boxes = new EnumMap<>(Field.class);
    private final Job job = Job.createSystem("Reading a wire list", monitor -> {
        work();
    });
    private Text path;
    private Text name;
    private Combo platform;
    private Table preview;
    private Label line;
    private volatile String wantedPath = "";
    private volatile String head = "";
    private volatile Map<Field, Integer> columns = Map.of();
    private volatile List<String> heads = List.of();
    private volatile Imported imported = new Imported("", List.of());

    WiresPage(IProject project) {
        super("wires");
        this.project = project;
        setTitle("Wire list");
        setDescription("Comma-separated values, or the first sheet of an .xlsx file, with headings in the first row."
                + " Rows that cannot be taken say why.");
        setPageComplete(false);
    }

    @Override
    public void createControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).applyTo(all);
        path = text(all, "&File", 2);
        Button browse = new Button(all, SWT.PUSH);
        browse.setText("&Browse...");
        browse.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            FileDialog dialog = new FileDialog(getShell(), SWT.OPEN);
            dialog.setFilterExtensions(new String[] {"*.csv;*.txt;*.xlsx", "*.*"});
            String chosen = dialog.open();
            if (chosen != null) {
                path.setText(chosen);
            }
        }));
        name = text(all, "Drawing's &name", 1);
        name.setText("imported");
        new Label(all, SWT.NONE).setText("&Platform");
        platform = new Combo(all, SWT.DROP_DOWN);
        if (project != null) {
            platform.setItems(Shared.rooms().truth(project).map(Truth::project).map(each ->
                    each.platforms().keySet().toArray(String[]::new)).orElse(new String[0]));
            platform.select(0);
        }
        for (Field field : Field.values()) {
            new Label(all, SWT.NONE).setText(field.words() + (field.isNeeded() ? " *" : ""));
            Combo box = new Combo(all, SWT.READ_ONLY);
            box.setItems(NONE);
            box.select(0);
            box.setData("field", field.words());
            box.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> changed(false)));
            GridDataFactory.fillDefaults().grab(true, false).applyTo(box);
            boxes.put(field, box);
        }
        line = new Label(all, SWT.NONE);
        GridDataFactory.fillDefaults().span(4, 1).grab(true, false).applyTo(line);
        preview = new Table(all, SWT.BORDER | SWT.FULL_SELECTION | SWT.VIRTUAL);
        preview.addListener(SWT.SetData, event -> fill((TableItem) event.item, imported.results().get(event.index)));
        preview.getAccessible().addAccessibleListener(Names.of("What becomes of each row"));
        preview.setHeaderVisible(true);
        GridDataFactory.fillDefaults().span(4, 1).grab(true, true).hint(SWT.DEFAULT, 180).applyTo(preview);
        column("row", 50);
        column("taken", 70);
        column("why not, or the line", 560);
        path.addModifyListener(event -> changed(true));
        name.addModifyListener(event -> changed(false));
        platform.addModifyListener(event -> changed(false));
        setControl(all);
    }

    @Override
    public void dispose() {
        job.cancel();
        super.dispose();
    }

    IProject project() {
        return project;
    }

    String drawing() {
        return name.getText().strip();
    }

    String text() {
        return imported.text();
    }

    private void changed(boolean file) {
        if (file) {
            heads = List.of();
            columns = Map.of();
        } else {
            Map<Field, Integer> chosen = new EnumMap<>(Field.class);
            boxes.forEach((field, box) -> {
                if (box.getSelectionIndex() > 0) {
                    chosen.put(field, box.getSelectionIndex() - 1);
                }
            });
            columns = chosen;
        }
        wantedPath = path.getText().strip();
        head = "drawing " + drawing() + (platform.getText().isBlank() ? "" : " of " + platform.getText().strip());
        setPageComplete(false);
        job.cancel();
        job.schedule(200);
    }

    /** Off the thread that draws: reads the file and works out what becomes of each row. */
    private void work() {
        try {
            WireTable table = WireTable.of(Files.readAllBytes(Path.of(wantedPath)));
            boolean fresh = !table.heads().equals(heads);
            Map<Field, Integer> mapped = fresh ? Field.guess(table.heads()) : columns;
            Imported now = new ImportWires(Shared.rooms().reader(), colours()).make(table, mapped, head);
            say(now.taken() + " of " + table.rows().size() + " rows are taken.", table.heads(), mapped, now);
        } catch (BadCall e) {
            say("Not read: " + e.getMessage() + ".", List.of(), Map.of(), new Imported("", List.of()));
        } catch (IOException | InvalidPathException e) {
            say("Not read: there is no file " + wantedPath + " that can be read.", List.of(), Map.of(),
                    new Imported("", List.of()));
        }
    }

    private Set<String> colours() {
        return Colours.known(project == null ? List.of() : Shared.rooms().truth(project)
                .map(each -> List.copyOf(each.project().parts().values())).orElse(List.of()));
    }

    private void say(String words, List<String> headings, Map<Field, Integer> mapped, Imported now) {
        Display.getDefault().asyncExec(() -> {
            if (preview.isDisposed()) {
                return;
            }
            line.setText(words.replace("&", "&&"));
            imported = now;
            if (!headings.equals(heads)) {
                List<String> items = new ArrayList<>(List.of(NONE));
                items.addAll(headings);
                boxes.forEach((field, box) -> {
                    box.setItems(items.toArray(String[]::new));
                    box.select(mapped.getOrDefault(field, -1) + 1);
                });
                heads = headings;
                columns = mapped;
            }
            preview.setItemCount(now.results().size());
            preview.clearAll();
            check();
        });
    }

    private static void fill(TableItem item, ImportWires.Result row) {
        item.setText(new String[] {Long.toString(row.row()), row.refusal().isEmpty() ? "yes" : "no",
            row.refusal().isEmpty() ? row.line() : row.refusal() + "   (" + row.line() + ")"});
    }

    private void check() {
        String wrong = project == null ? "Choose a project first; the drawing goes into it."
                : !drawing().matches("[A-Za-z][A-Za-z0-9_]*") ? "A name is made of letters and digits, and begins with"
                + " a letter." : project.getFile(drawing() + ".loom").exists() ? "The project has a file "
                + drawing() + ".loom already." : null;
        setErrorMessage(wrong);
        setPageComplete(wrong == null && imported.taken() > 0);
    }

    private void column(String title, int width) {
        TableColumn column = new TableColumn(preview, SWT.NONE);
        column.setText(title);
        column.setWidth(width);
    }

    private static Text text(Composite parent, String label, int span) {
        new Label(parent, SWT.NONE).setText(label);
        Text text = new Text(parent, SWT.BORDER);
        GridDataFactory.fillDefaults().grab(true, false).span(span, 1).applyTo(text);
        return text;
    }
}
