// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
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
 * Makes all documents as PDF, those that are lists also as XLSX and CSV, several at a time. The whole set is held in
 * memory. Safe for use by several threads; equal input gives equal bytes, whatever the number of threads.
 */
public final class PrintedSheets implements SheetEngine {

    /** What takes longest is begun first, the last of these before all others. */
    private static final List<SheetKind> LONGEST = List.of(SheetKind.INSTALLATION, SheetKind.FORMBOARD,
            SheetKind.CIRCUITS);

    private final int threads;

    /** @param threads the most threads to print with, at least 1 */
    public PrintedSheets(int threads) {
        this.threads = threads;
    }

    /** A document to print, and what prints it. */
    private record Job(SheetKind kind, Function<Press, Printed> work) {
    }

    /** A document that is printed; the names of its files begin with the name of the document. */
    private record Printed(String name, String title, List<SheetFile> files) {
    }

    @Override
    public List<SheetFile> make(Order order, SheetChoice choice, Cancel cancel, Progress progress) {
        List<Job> jobs = new ArrayList<>(jobs(order));
        jobs.removeIf(job -> !choice.kinds().contains(job.kind()));
        List<Printed> printed = new ArrayList<>(all(jobs, order, choice, cancel, progress));
        if (choice.kinds().contains(SheetKind.COVER)) {
            List<String> titles = printed.stream().map(Printed::title).toList();
            printed.addFirst(new Press(order, choice).print(press -> press.composer.cover(titles)));
        }
        Set<String> taken = new HashSet<>();
        List<SheetFile> files = new ArrayList<>();
        for (Printed each : printed) {
            String name = each.name();
            for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
                name = each.name() + "-" + i;
            }
            for (SheetFile file : each.files()) {
                files.add(new SheetFile(name + file.name().substring(each.name().length()), file.pages(),
                        file.bytes()));
            }
        }
        return List.copyOf(files);
    }

    private static List<Job> jobs(Order order) {
        List<Job> jobs = new ArrayList<>();
        jobs.add(new Job(SheetKind.APPLICATION, press -> press.print(each -> each.composer.application())));
        jobs.add(new Job(SheetKind.INSTALLATION, press -> press.print(each -> each.composer.installation())));
        jobs.add(new Job(SheetKind.PARTS, press -> press.print(each -> each.composer.parts())));
        jobs.add(new Job(SheetKind.TAGS, press -> press.print(each -> each.composer.tags())));
        for (LaidHarness harness : order.harnesses()) {
            jobs.add(new Job(SheetKind.WIRE_LIST, press -> press.print(each -> each.composer.wireList(harness))));
            jobs.add(new Job(SheetKind.CRIMPS, press -> press.print(each -> each.composer.crimps(harness))));
            jobs.add(new Job(SheetKind.FORMBOARD, press -> press.board(harness)));
            jobs.add(new Job(SheetKind.END_VIEWS, press -> press.print(each -> each.composer.endViews(harness))));
            jobs.add(new Job(SheetKind.CIRCUITS, press -> press.print(
                    each -> each.composer.circuits(harness, each.pager))));
            jobs.add(new Job(SheetKind.CONTINUITY, press -> press.print(each -> each.composer.continuity(harness))));
            jobs.add(new Job(SheetKind.TRAVELLER, press -> press.print(each -> each.composer.traveller(harness))));
        }
        return jobs;
    }

    /** Does jobs, each thread with a press of its own; the results are in the order of the jobs. */
    private List<Printed> all(List<Job> jobs, Order order, SheetChoice choice, Cancel cancel, Progress progress) {
        Printed[] results = new Printed[jobs.size()];
        List<Integer> turns = IntStream.range(0, results.length).boxed()
                .sorted(Comparator.comparing(each -> LONGEST.indexOf(jobs.get(each).kind()),
                        Comparator.reverseOrder())).toList();
        AtomicInteger next = new AtomicInteger();
        Runnable worker = () -> {
            Press press = null;
            for (int done = next.getAndIncrement(); done < results.length; done = next.getAndIncrement()) {
                int i = turns.get(done);
                cancel.check();
                progress.report("printing the " + jobs.get(i).kind().word().replace('-', ' '), done, results.length);
                press = press == null ? new Press(order, choice) : press;
                results[i] = jobs.get(i).work().apply(press);
            }
        };
        int crew = Math.max(1, Math.min(threads, jobs.size()));
        try (ExecutorService pool = Executors.newFixedThreadPool(crew)) {
            List<Future<?>> working = new ArrayList<>();
            for (int i = 0; i < crew; i++) {
                working.add(pool.submit(worker));
            }
            for (Future<?> each : working) {
                each.get();
            }
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException reason) {
                throw reason;
            }
            if (e.getCause() instanceof Error reason) {
                throw reason;
            }
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while sheets were printed", e);
        }
        return List.of(results);
    }

    /** All that one thread prints with. */
    private static final class Press {
        private final Typeface face = new Typeface();
        private final PdfWriter writer = new PdfWriter(face);
        private final Composer composer;
        private final Pager pager;
        private final SheetChoice choice;

        Press(Order order, SheetChoice choice) {
            this.choice = choice;
            this.composer = new Composer(order, face);
            this.pager = new Pager(face, choice.paper(), new TitleBlock(order.title() + " (" + order.name() + ")",
                    order.revision(), order.sources(), order.words(), choice.stamp()));
        }

        Printed print(Function<Press, Document> document) {
            return print(document.apply(this), List.of());
        }

        Printed board(LaidHarness harness) {
            Formboard formboard = composer.formboard(harness, pager, choice.board().width(), choice.board().height());
            Document document = formboard.document();
            return print(document, List.of(new SheetFile(document.name() + ".svg", 0, new SvgWriter(face).bytes(
                    document.title() + ", " + document.subject(), formboard.board()))));
        }

        private Printed print(Document document, List<SheetFile> more) {
            List<Page> pages = pager.pages(document);
            List<SheetFile> files = new ArrayList<>();
            files.add(new SheetFile(document.name() + ".pdf", pages.size(),
                    writer.bytes(document.title() + ", " + document.subject(), pages)));
            if (!document.data().isEmpty()) {
                files.add(new SheetFile(document.name() + ".xlsx", 0, XlsxWriter.bytes(document.data())));
                for (int i = 0; i < document.data().size(); i++) {
                    Block.Grid grid = document.data().get(i);
                    files.add(new SheetFile(document.name() + (i == 0 ? "" : "-" + grid.name().replace(' ', '-'))
                            + ".csv", 0, CsvWriter.bytes(grid)));
                }
            }
            files.addAll(more);
            return new Printed(document.name(), document.title().toLowerCase(Locale.ROOT) + " " + document.subject(),
                    files);
        }
    }
}
