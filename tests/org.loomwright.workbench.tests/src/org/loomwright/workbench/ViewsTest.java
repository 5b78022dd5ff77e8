// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.TableCursor;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.focus.Choice;

/** The views: what they show, how they follow each other, and where they lead. */
class ViewsTest {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();
    private IProject project;
    private ITextEditor editor;

    @BeforeEach
    void open() throws Exception {
        project = desk.orrin("views");
        editor = desk.open(project.getFile("front-harness.loom"));
        hand.tell(() -> Shared.focus().choose(Choice.ALL));
    }

    @AfterEach
    void close() {
        desk.closeAll();
    }

    @Test
    void aVehicleIsChosenWithKeysAndTheOthersFollow() {
        desk.view("fit");
        desk.view("vehicles");
        hand.until("all vehicles are counted", () -> says("43,920 vehicles of orrin"));
        Combo year = hand.found("the box of years", () -> Hand.control(hand.window(), Combo.class,
                each -> "year".equals(each.getData("axis"))));
        hand.tell(year::setFocus);
        hand.press(0, SWT.ARROW_DOWN);
        hand.until("1964 is chosen", () -> "1964".equals(Shared.focus().choice().members().get("year")));
        hand.until("fewer vehicles remain", () -> says("of 43,920 vehicles of orrin remain: 1964"));
        hand.until("the fit is about them", () -> says("Shown for orrin: 1964"));
        Table fit = hand.found("the table of fit", () -> Hand.control(hand.window(), Table.class,
                each -> each.getColumnCount() > 2 && each.getColumn(0).getText().equals("place")));
        hand.until("the one drawing of that year is left", () -> fit.getColumnCount() == 3);
        String[] heads = hand.ask(() -> Arrays.stream(fit.getColumns()).map(each -> each.getText())
                .toArray(String[]::new));
        assertEquals(java.util.List.of("place", "least", "front64"), java.util.List.of(heads));
        Combo body = hand.found("the box of bodies", () -> Hand.control(hand.window(), Combo.class,
                each -> "body".equals(each.getData("axis"))));
        String coupe = hand.ask(() -> body.getItem(2));
        assertEquals("coupe - none left", coupe, "there was no coupe in 1964");
        hand.picture("vehicles");
    }

    @Test
    void aCellOfTheFitLeadsToTheLine() {
        desk.view("fit");
        TableCursor cursor = hand.found("the cursor of the table", () -> Hand.control(hand.window(),
                TableCursor.class, each -> each.getRow() != null));
        hand.tell(cursor::setFocus);
        hand.press(0, SWT.ARROW_RIGHT);
        hand.press(0, SWT.ARROW_RIGHT);
        hand.press(0, SWT.ARROW_DOWN);
        hand.until("the cursor moved", () -> cursor.getColumn() == 2
                && cursor.getRow().getText(0).equals("headlampLeft (bHeadL)"));
        assertEquals("68.9", hand.ask(() -> cursor.getRow().getText(2)), "as the table in the documentation has it");
        hand.picture("fit");
        hand.press(0, SWT.CR);
        hand.until("the line of the branch is chosen", () -> editor.getSelectionProvider().getSelection()
                instanceof ITextSelection text && text.getText().startsWith("branch bHeadL from leftWing"));
    }

    @Test
    void theFitIsShownAsPlannedToo() {
        desk.view("fit");
        hand.until("the fit of the front is shown", () -> says("front fits"));
        Combo box = hand.found("the box of harnesses", () -> Hand.control(hand.window(), Combo.class,
                each -> Arrays.asList(each.getItems()).contains("front, as planned")));
        int planned = hand.ask(() -> Arrays.asList(box.getItems()).indexOf("front, as planned"));
        hand.tell(() -> {
            box.select(planned);
            box.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        });
        hand.until("the plan is shown", () -> says("As planned, not as it stands in the source: front fits"));
        Table chart = hand.found("the application chart", () -> Hand.control(hand.window(), Table.class,
                each -> each.getColumnCount() == 3 && each.getColumn(2).getText().equals("takes")));
        assertEquals("front64|year < late67 and (saloon or estate)|front",
                hand.ask(() -> row(chart, 0)), "which vehicles take what, as the command says it");
        hand.picture("fit-planned");
        int refused = hand.ask(() -> Arrays.asList(box.getItems()).indexOf("rear, as planned"));
        hand.tell(() -> {
            box.select(refused);
            box.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        });
        hand.until("it says that no harness serves all", () -> says("No harness serves all drawings of rear"));
        String rows = hand.ask(() -> java.util.stream.IntStream.range(0, chart.getItemCount())
                .mapToObj(i -> row(chart, i)).collect(java.util.stream.Collectors.joining("\n")));
        assertTrue(rows.contains("|harness 1") && rows.contains("|harness 2"), rows);
        assertTrue(rows.contains("|why|the fewest that serve all: 2"), rows);
        hand.picture("fit-refused");
        hand.tell(() -> {
            box.select(Arrays.asList(box.getItems()).indexOf("front"));
            box.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        });
        hand.until("the fit of the source is shown again", () -> !says("As planned, not as it stands"));
    }

    private static String row(Table table, int row) {
        return table.getItem(row).getText(0) + "|" + table.getItem(row).getText(1) + "|"
                + table.getItem(row).getText(2);
    }

    @Test
    void theHarnessIsDrawnAndWalkedWithKeys() {
        desk.view("harness");
        hand.until("the harness of the editor is drawn", () -> says("front, Front lighting, for every vehicle"));
        Canvas canvas = hand.found("the drawing", () -> Hand.control(hand.window(), Canvas.class,
                each -> each.getClass() == Canvas.class && (each.getStyle() & SWT.V_SCROLL) != 0));
        hand.tell(canvas::setFocus);
        hand.press(0, SWT.ARROW_RIGHT);
        hand.press(0, SWT.ARROW_RIGHT);
        hand.picture("harness");
        hand.press(0, SWT.CR);
        hand.until("a line of the harness is chosen", () -> editor.getSelectionProvider().getSelection()
                instanceof ITextSelection text && text.getLength() > 0);
        String chosen = hand.ask(() -> ((ITextSelection) editor.getSelectionProvider().getSelection()).getText());
        assertTrue(chosen.startsWith("branch bBatt from tray to batteryTray 285 mm"), chosen);
    }

    @Test
    void aBranchOfTheFormboardLeadsToItsLine() {
        desk.view("formboard");
        hand.until("the board of the editor's harness is drawn", () -> says("front fits a board of 2440 x 1220 mm"));
        Canvas canvas = hand.found("the board", () -> Hand.control(hand.window(), Canvas.class,
                each -> each.getData("Formboard") != null));
        hand.tell(canvas::setFocus);
        hand.until("the board has the keys", canvas::isFocusControl);
        hand.press(0, SWT.PAGE_DOWN);
        hand.press(0, SWT.PAGE_DOWN);
        hand.picture("formboard");
        hand.press(0, SWT.CR);
        hand.until("the line of a branch is chosen", () -> editor.getSelectionProvider().getSelection()
                instanceof ITextSelection text && text.getText().startsWith("branch "));
    }

    @Test
    void theCircuitAtTheCursorIsDrawnAndAWireLeadsToItsLine() {
        desk.view("circuit");
        String text = hand.ask(() -> editor.getDocumentProvider().getDocument(editor.getEditorInput()).get());
        int at = text.indexOf("circuit 16 ");
        hand.tell(() -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(at + 8, 0);
        });
        hand.until("the circuit at the cursor is drawn", () -> says("Circuit 16, ") && says("with kit"));
        Combo mode = hand.found("the box of modes", () -> Hand.control(hand.window(), Combo.class,
                each -> "Mode".equals(each.getData("choice"))));
        hand.until("the modes have the keys", () -> mode.setFocus() && mode.isFocusControl());
        int dipped = hand.ask(() -> Arrays.asList(mode.getItems()).indexOf("dippedBeam"));
        int chosen = hand.ask(mode::getSelectionIndex);
        for (int i = chosen; i < dipped; i++) {
            hand.press(0, SWT.ARROW_DOWN);
        }
        hand.until("the mode is chosen", () -> mode.getText().equals("dippedBeam"));
        hand.until("the mode is solved", () -> says("Driving at night on dipped beam") && says("up to"));
        Canvas canvas = hand.found("the circuit", () -> Hand.control(hand.window(), Canvas.class,
                each -> each.getData("Circuit") != null));
        hand.tell(canvas::setFocus);
        hand.until("the circuit has the keys", canvas::isFocusControl);
        hand.press(0, SWT.PAGE_DOWN);
        for (int i = 0; i < 40 && !hand.ask(() -> String.valueOf(canvas.getToolTipText())).matches(
                "wire 16\\w+ .* of front from .*"); i++) {
            hand.press(0, SWT.PAGE_DOWN);
        }
        String told = hand.ask(canvas::getToolTipText);
        assertTrue(told.matches("wire 16\\w+ .*: \\d+\\.\\d\\d A, loses .* mV, \\d+ C"), told);
        hand.picture("circuit");
        hand.tell(() -> page(editor).toggleZoom(page(editor).getActivePartReference()));
        hand.press(0, '0');
        hand.picture("circuit-large");
        hand.tell(() -> page(editor).toggleZoom(page(editor).getActivePartReference()));
        hand.press(0, SWT.CR);
        hand.until("the line of the wire is chosen", () -> editor.getSelectionProvider().getSelection()
                instanceof ITextSelection text2 && text2.getText().startsWith("wire ")
                && text2.getOffset() > at);
    }

    @Test
    void theYearsStandSideBySide() {
        desk.view("years");
        hand.until("the years are laid out", () -> says("drawings that fill"));
        Table years = hand.found("the table of years", () -> Hand.control(hand.window(), Table.class,
                each -> each.getColumnCount() > 2 && each.getColumn(0).getText().equals("fact")));
        assertTrue(hand.ask(years::getItemCount) > 10);
        Combo box = hand.found("the box of positions", () -> Hand.control(hand.window(), Combo.class,
                each -> Arrays.asList(each.getItems()).contains("frontLighting")));
        int front = hand.ask(() -> Arrays.asList(box.getItems()).indexOf("frontLighting"));
        hand.tell(() -> {
            box.select(front);
            box.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        });
        hand.until("the front drawings are shown", () -> years.getColumnCount() == 5
                && years.getColumn(1).getText().equals("front64"));
        hand.picture("years");
    }

    private static IWorkbenchPage page(ITextEditor editor) {
        return editor.getSite().getPage();
    }

    private boolean says(String words) {
        return Hand.control(hand.window(), Label.class, each -> each.getText().contains(words)).isPresent();
    }
}
