// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.eclipse.compare.CompareUI;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.jgit.api.Git;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;
import org.loomwright.workbench.compare.RevisionInput;

/**
 * Says what of ours holds the thread that draws over 200 ms while the Orrin is opened, typed into and compared.
 * Run by hand ({@code -Dtest=HoldsByHand}); prints, and decides nothing.
 */
class HoldsByHand {

    private final Desk desk = new Desk();
    private final Hand hand = desk.hand();

    @Test
    void openTypeCompare() throws Exception {
        IProject project;
        ITextEditor editor;
        try (HoldSampler sampler = new HoldSampler(hand.display())) {
            long begin = System.nanoTime();
            project = desk.orrin("held");
            editor = desk.open(project.getFile("front-harness.loom"));
            hand.until("findings are there", () -> Desk.truth(project).isPresent());
            System.out.println("opened and checked after " + (System.nanoTime() - begin) / 1_000_000 + " ms; since the"
                    + " start of the process " + ProcessHandle.current().info().startInstant().map(start ->
                    Duration.between(start, Instant.now()).toMillis()).orElse(-1L) + " ms, and "
                    + ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toMillis()
                    + " ms of processor time");
            for (String view : List.of("fit", "years", "harness", "formboard", "circuit", "findings")) {
                desk.view(view);
                hand.rest(3_000);
            }
            report("opening, all views", sampler);
        }
        try (HoldSampler sampler = new HoldSampler(hand.display())) {
            StyledText text = desk.text(editor);
            hand.tell(() -> {
                editor.getSite().getPage().activate(editor);
                editor.selectAndReveal(0, 0);
                text.setFocus();
            });
            for (int i = 0; i < 40; i++) {
                hand.press(0, i % 2 == 0 ? '/' : SWT.BS);
                hand.rest(100);
            }
            hand.rest(3_000);
            report("typing", sampler);
            hand.tell(editor::doRevertToSaved);
        }
        try (Git git = Git.init().setDirectory(project.getLocation().toFile()).call()) {
            git.getRepository().getConfig().setBoolean("commit", null, "gpgsign", false);
            git.add().addFilepattern(".").call();
            git.commit().setMessage("first").setAuthor("A", "a@example.org").setCommitter("A", "a@example.org")
                    .setSign(false).call();
        }
        IFile file = project.getFile("front-harness.loom");
        String now = new String(file.getContents().readAllBytes(), StandardCharsets.UTF_8).replace(
                "branch bBatt from tray to batteryTray 285 mm", "branch bBatt from tray to batteryTray 265 mm");
        file.setContents(new ByteArrayInputStream(now.getBytes(StandardCharsets.UTF_8)), true, true, null);
        try (HoldSampler sampler = new HoldSampler(hand.display())) {
            hand.tell(() -> CompareUI.openCompareEditor(new RevisionInput(project, "HEAD", "")));
            Tree files = hand.found("the files that differ", () -> Hand.control(hand.window(), Tree.class,
                    each -> each.getItemCount() == 1 && each.getItem(0).getText().contains("front-harness.loom")));
            hand.tell(() -> {
                files.setSelection(files.getItem(0));
                Event event = new Event();
                event.item = files.getItem(0);
                files.notifyListeners(SWT.DefaultSelection, event);
            });
            hand.rest(15_000);
            report("comparing", sampler);
        }
        desk.closeAll();
    }

    private static void report(String what, HoldSampler sampler) {
        List<HoldSampler.Hold> holds = sampler.holds();
        System.out.println(what + ": not free for more than " + HoldSampler.MOST + " ms " + holds.size() + " times");
        holds.forEach(each -> System.out.println("  " + each.wall() + " ms, of which " + each.busy()
                + " ms busy: " + (each.frames().isEmpty() ? "none of ours" : String.join("; ", each.frames()))));
    }
}
