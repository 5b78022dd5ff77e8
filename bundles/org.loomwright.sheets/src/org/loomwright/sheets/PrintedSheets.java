// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.sheets.compose.Composer;
import org.loomwright.sheets.compose.Formboard;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Page;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.TitleBlock;
import org.loomwright.sheets.page.Typeface;
import org.loomwright.sheets.write.CsvWriter;
import org.loomwright.sheets.write.PdfWriter;
import org.loomwright.sheets.write.SvgWriter;
import org.loomwright.sheets.write.XlsxWriter;

/**
 * Makes all documents as PDF, those that are lists also as XLSX and CSV. The whole set is held in memory. Safe for use
 * by several threads; equal input gives equal bytes.
 */
public final class PrintedSheets implements SheetEngine {

    @Override
    public List<SheetFile> make(Order order, SheetChoice choice, Cancel cancel, Progress progress) {
        return new Run(order, choice, cancel, progress).files();
    }

    /** One set in the making. */
    private static final class Run {
        private final Order order;
        private final SheetChoice choice;
        private final Cancel cancel;
        private final Progress progress;
        private final Typeface face = new Typeface();
        private final PdfWriter writer = new PdfWriter(face);
        private final Composer composer;
        private final Pager pager;
        private final List<SheetFile> files = new ArrayList<>();
        private final List<String> titles = new ArrayList<>();
        private final Set<String> taken = new HashSet<>();
        private final int steps;
        private int done;

        Run(Order order, SheetChoice choice, Cancel cancel, Progress progress) {
            this.order = order;
            this.choice = choice;
            this.cancel = cancel;
            this.progress = progress;
            this.composer = new Composer(order, face);
            this.pager = new Pager(face, choice.paper(), new TitleBlock(order.title() + " (" + order.name() + ")",
                    order.revision(), order.sources(), order.words(), choice.stamp()));
            this.steps = choice.kinds().size() * Math.max(1, order.harnesses().size());
        }

        List<SheetFile> files() {
            step(SheetKind.APPLICATION, () -> print(composer.application()));
            step(SheetKind.INSTALLATION, () -> print(composer.installation()));
            step(SheetKind.PARTS, () -> print(composer.parts()));
            step(SheetKind.TAGS, () -> print(composer.tags()));
            for (LaidHarness harness : order.harnesses()) {
                step(SheetKind.WIRE_LIST, () -> print(composer.wireList(harness)));
                step(SheetKind.CRIMPS, () -> print(composer.crimps(harness)));
                step(SheetKind.FORMBOARD, () -> board(harness));
                step(SheetKind.END_VIEWS, () -> print(composer.endViews(harness)));
                step(SheetKind.CIRCUITS, () -> print(composer.circuits(harness)));
                step(SheetKind.CONTINUITY, () -> print(composer.continuity(harness)));
                step(SheetKind.TRAVELLER, () -> print(composer.traveller(harness)));
            }
            List<SheetFile> rest = List.copyOf(files);
            files.clear();
            step(SheetKind.COVER, () -> print(composer.cover(List.copyOf(titles))));
            files.addAll(rest);
            return List.copyOf(files);
        }

        private void step(SheetKind kind, Runnable work) {
            if (choice.kinds().contains(kind)) {
                cancel.check();
                progress.report("printing the " + kind.word().replace('-', ' '), Math.min(done++, steps), steps);
                work.run();
            }
        }

        private void board(LaidHarness harness) {
            Formboard formboard = composer.formboard(harness, pager, choice.board().width(), choice.board().height());
            print(formboard.document());
            files.add(new SheetFile(formboard.document().name() + ".svg", 0, new SvgWriter(face).bytes(
                    formboard.document().title() + ", " + formboard.document().subject(), formboard.board())));
        }

        private void print(Document document) {
            List<Page> pages = pager.pages(document);
            String name = document.name();
            for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
                name = document.name() + "-" + i;
            }
            titles.add(document.title().toLowerCase(Locale.ROOT) + " " + document.subject());
            files.add(new SheetFile(name + ".pdf", pages.size(),
                    writer.bytes(document.title() + ", " + document.subject(), pages)));
            if (!document.data().isEmpty()) {
                files.add(new SheetFile(name + ".xlsx", 0, XlsxWriter.bytes(document.data())));
                for (int i = 0; i < document.data().size(); i++) {
                    Block.Grid grid = document.data().get(i);
                    files.add(new SheetFile(name + (i == 0 ? "" : "-" + grid.name().replace(' ', '-')) + ".csv", 0,
                            CsvWriter.bytes(grid)));
                }
            }
        }
    }
}
