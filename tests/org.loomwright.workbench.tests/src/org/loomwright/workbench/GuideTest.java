// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.Platform;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.guide.GuideView;

/** The pages of help are those of the documentation, and can be reached. */
class GuideTest {

    private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"#:]+)(?:#[^\"]*)?\"");

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    private static Path guide() throws Exception {
        return Path.of(FileLocator.toFileURL(Platform.getBundle(Shared.ID).getEntry("guide/")).toURI());
    }

    @Test
    void everyPageOfTheDocumentationIsThereAndLeadsSomewhere() throws Exception {
        Path docs = Path.of(System.getProperty("loomwright.root"), "docs").toRealPath();
        TreeSet<String> lost = new TreeSet<>();
        int pages = 0;
        try (Stream<Path> all = Files.walk(docs)) {
            for (Path each : all.filter(file -> file.toString().endsWith(".md")).toList()) {
                String name = docs.relativize(each).toString();
                if (!name.startsWith("examples")) {
                    Path page = guide().resolve(name.replaceAll("\\.md$", ".html"));
                    Matcher links = LINK.matcher(Files.readString(page, StandardCharsets.UTF_8));
                    while (links.find()) {
                        if (links.group(1).endsWith(".html") || links.group(1).endsWith(".png")) {
                            if (!Files.exists(page.resolveSibling(links.group(1)))) {
                                lost.add(name + " to " + links.group(1));
                            }
                        }
                    }
                    pages++;
                }
            }
        }
        assertTrue(pages > 30, "pages: " + pages);
        assertEquals(new TreeSet<>(), lost);
        assertTrue(Files.readString(guide().resolve("workbench.html")).contains("<table>"), "tables are tables");
    }

    @Test
    void theGuideIsOpenedFromTheMenuAndGoneThroughWithKeys() {
        IWorkbenchPage page = desk.page();
        hand.tell(() -> {
            try {
                PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(Shared.ID + ".guide", null);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        Table table = hand.found("the list of pages", () -> Hand.control(hand.window(), Table.class,
                each -> Arrays.stream(each.getItems()).anyMatch(item -> item.getText().equals("The workbench"))));
        hand.until("it has the keys", table::isFocusControl);
        hand.press(0, SWT.ARROW_DOWN);
        hand.until("the next page is chosen", () -> table.getSelectionIndex() == 1);
        assertEquals("The workbench", hand.ask(() -> table.getItem(1).getText()));
        assertTrue(List.of(hand.ask(table::getItems)).size() > 30);
        hand.picture("guide");
        hand.tell(() -> page.hideView(page.findView(GuideView.ID)));
    }

    @Test
    void theKeyForHelpInTheTextLeadsToThePageAboutTheRuleOfTheLine() throws Exception {
        IProject project = desk.orrin("views");
        List<Finding> all = Desk.truth(project).orElseThrow().report().findings();
        Finding finding = all.stream().filter(each -> each.rule().equals("wire-too-hot")).findFirst().orElseThrow();
        Set<String> ofTheLine = all.stream().filter(each -> each.place().span().file().equals(finding.place().span()
                .file()) && each.place().span().line() == finding.place().span().line()).map(Finding::rule)
                .collect(Collectors.toSet());
        ITextEditor editor = desk.open(project.getFile(finding.place().span().file()));
        StyledText text = desk.text(editor);
        hand.tell(() -> {
            editor.getSite().getPage().activate(editor);
            editor.selectAndReveal(finding.place().span().offset(), 0);
            text.setFocus();
        });
        hand.until("the editor has the keys", text::isFocusControl);
        hand.press(0, SWT.F1);
        Table table = hand.found("the list of pages", () -> Hand.control(hand.window(), Table.class,
                each -> Arrays.stream(each.getItems()).anyMatch(item -> item.getText().equals("The workbench"))));
        hand.until("the page about its rule is chosen", () -> table.getSelection().length == 1
                && ofTheLine.contains(table.getSelection()[0].getText()));
        hand.tell(() -> desk.page().hideView(desk.page().findView(GuideView.ID)));
        desk.closeAll();
    }
}
