// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject;
import org.loomwright.app.PrintSheets;
import org.loomwright.app.PrintSheets.Asked;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.fit.ChainJudge;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.page.Paper;

/** Prints projects of the repository and texts of tests; the rules are not asked, they have tests of their own. */
public final class Examples {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root", "../..")).toAbsolutePath()
            .normalize();

    private final SourceReader reader = LoomReader.create();
    private final PrintSheets print;

    /** Prints with one thread. */
    public Examples() {
        this(1);
    }

    /** Prints with so many threads. */
    public Examples(int threads) {
        print = new PrintSheets(
                (project, settings, cancel, progress) -> new Report(List.of(), new Report.Work(0, 0, 0)),
                StandardRules.book().infos(), new ChainJudge(), new PrintedSheets(threads));
    }

    /** A project of {@code docs/examples}. */
    public OpenProject.Opened example(String name) throws BadCall {
        return new OpenProject(reader, 2).open(ProjectPlace.findOne(ROOT.resolve("docs/examples"), name), Cancel.NEVER,
                Progress.NONE);
    }

    /** A project of one source. */
    public OpenProject.Opened text(Path folder, String text) throws BadCall, IOException {
        Files.writeString(folder.resolve("all.loom"), text);
        return new OpenProject(reader, 1).open(ProjectPlace.findOne(folder, "all.loom"), Cancel.NEVER, Progress.NONE);
    }

    /** The files of a kit or harness. */
    public List<SheetFile> files(OpenProject.Opened opened, String name, String vehicles, SheetChoice choice)
            throws BadCall {
        return print.print(opened, new Asked(name, vehicles, false), reader, choice, Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).files();
    }

    /** What sheets of a kit or harness are made of. */
    public Order order(OpenProject.Opened opened, String name, String vehicles) throws BadCall {
        return print.print(opened, new Asked(name, vehicles, false), reader,
                SheetChoice.of(Paper.A4, SheetKind.COVER), Settings.TIMELESS,
                Cancel.NEVER, Progress.NONE).order();
    }

    /** Writes files into a folder and returns their paths by name. */
    public static TreeMap<String, Path> write(Path folder, List<SheetFile> files) throws IOException {
        TreeMap<String, Path> paths = new TreeMap<>();
        for (SheetFile file : files) {
            paths.put(file.name(), Files.write(folder.resolve(file.name()), file.bytes()));
        }
        return paths;
    }
}
