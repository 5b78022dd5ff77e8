// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.workbench.importing.ImportWizard;

/** The wizard that takes wire lists over, driven by keyboard and mouse. */
class ImportTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @TempDir
    private Path folder;

    private IProject project;

    @AfterEach
    void away() throws Exception {
        Files.deleteIfExists(Path.of("wires.csv"));
        if (project != null) {
            project.delete(true, true, null);
        }
    }

    @Test
    void aListOfCommaSeparatedValuesBecomesADrawing() throws Exception {
        Path list = Files.writeString(Path.of("wires.csv"), """
                Circuit,Function,Colour,Gauge,From,Pin
                12,Dipped left,GN/RD,16 ga,J1:2,H1:1
                13,Horn,BN,16,J1:4,N1:1
                14,Aerial,BK,18 ga,J1:7,A1:1
                """);
        Shell shell = opened(list);
        Table table = table(shell);
        hand.until("no row is taken without its other end", () -> table.getItemCount() == 3
                && table.getItem(0).getText(2).startsWith("no column is chosen for to"));
        Combo to = hand.found("the box of the other end", () -> Hand.control(shell, Combo.class,
                each -> "to".equals(each.getData("field"))));
        hand.tell(to::setFocus);
        for (int i = 0; i < 6; i++) {
            hand.press(0, SWT.ARROW_DOWN);
        }
        hand.until("the last column is chosen", () -> to.getText().equals("Pin"));
        hand.until("two rows are taken", () -> table.getItem(0).getText(1).equals("yes")
                && table.getItem(2).getText(1).equals("yes"));
        assertTrue(hand.ask(() -> table.getItem(1).getText(2)).contains("a wire size needs its system"));
        hand.rest(500);
        hand.picture("import");
        assertEquals("""
                drawing imported of p {
                    circuit 12 "Dipped left" GN/RD {
                        wire a 16 ga from J1:2 to H1:1
                    }
                    circuit 14 "Aerial" BK {
                        wire a 18 ga from J1:7 to A1:1
                    }
                }
                """, finished(shell));
    }

    @Test
    void aSpreadsheetDoesSoToo() throws Exception {
        Path list = folder.resolve("list.xlsx");
        try (OutputStream file = Files.newOutputStream(list); ZipOutputStream zip = new ZipOutputStream(file)) {
            for (Map.Entry<String, String> part : Map.of("xl/workbook.xml", "<workbook xmlns:r='http://schemas."
                    + "openxmlformats.org/officeDocument/2006/relationships'><sheet r:id='a'/></workbook>",
                    "xl/_rels/workbook.xml.rels", "<all><Relationship Id='a' Target='sheet.xml'/></all>",
                    "xl/sheet.xml", "<sheet>" + row("Circuit", "Size", "Colour", "From", "To")
                            + row("12", "16 ga", "BK", "J1:2", "H1:1") + row("13", "16", "BK", "J1:3", "H1:2")
                            + row("14", "16 ga", "mauve", "J1:4", "H1:3") + row("15", "16 ga", "BK", "J1:5", "")
                            + "</sheet>").entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        Shell shell = opened(list);
        Table table = table(shell);
        hand.until("one row is taken", () -> table.getItemCount() == 4 && table.getItem(0).getText(1).equals("yes"));
        List<String> why = hand.ask(() -> Arrays.stream(table.getItems()).map(each -> each.getText(2)).toList());
        assertTrue(why.get(1).contains("a wire size needs its system"), why.get(1));
        assertTrue(why.get(2).startsWith("there is no colour named \"mauve\"; write a code of IEC 60757"), why.get(2));
        assertTrue(why.get(3).startsWith("the cell for to is empty"), why.get(3));
        assertTrue(finished(shell).contains("wire a 16 ga from J1:2 to H1:1"));
    }

    private static String row(String... cells) {
        StringBuilder row = new StringBuilder("<row>");
        for (String cell : cells) {
            row.append("<c t='inlineStr'><is><t>").append(cell).append("</t></is></c>");
        }
        return row.append("</row>").toString();
    }

    private Table table(Shell shell) {
        return hand.found("the rows", () -> Hand.control(shell, Table.class, each -> true));
    }

    private Shell opened(Path list) throws Exception {
        desk.page();
        project = desk.empty("lists");
        PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
            ImportWizard wizard = new ImportWizard();
            wizard.init(PlatformUI.getWorkbench(), new StructuredSelection(project));
            new WizardDialog(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell(), wizard).open();
        });
        Shell shell = hand.found("the wizard", () -> hand.shell("Import a Wire List"));
        Text path = hand.found("the field of the file", () -> Hand.control(shell, Text.class,
                each -> each.isEnabled() && each.getText().isEmpty()));
        hand.tell(path::setFocus);
        hand.tell(() -> path.setText(list.toString()));
        Combo platform = hand.found("the platform", () -> Hand.control(shell, Combo.class,
                each -> (each.getStyle() & SWT.READ_ONLY) == 0));
        hand.tell(() -> platform.setText("p"));
        return shell;
    }

    private String finished(Shell shell) throws IOException {
        Button finish = hand.found("the button that ends it", () -> Hand.control(shell, Button.class,
                each -> each.getText().contains("Finish") && each.isEnabled()));
        hand.click(finish);
        hand.until("the wizard is closed", shell::isDisposed);
        IFile file = project.getFile("imported.loom");
        hand.until("the drawing is there", file::exists);
        return Files.readString(file.getLocation().toPath());
    }
}
