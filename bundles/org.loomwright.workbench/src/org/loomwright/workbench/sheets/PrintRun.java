// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.sheets;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.PrintSheets;
import org.loomwright.app.PrintSheets.Asked;
import org.loomwright.app.PrintSheets.Printed;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.write.SetFolder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.sheets.SheetChoice;
import org.loomwright.sheets.SheetFile;
import org.loomwright.sheets.SheetKind;
import org.loomwright.sheets.page.Paper;

/**
 * What is printed, and where to. Knows nothing of windows.
 *
 * @param name           a kit or a harness
 * @param vehicles       the vehicles, in the words of the language; empty for all
 * @param kinds          the documents, at least one
 * @param paper          the paper
 * @param folder         where the files go; a path that is not absolute starts from the folder of the project
 * @param evenWithErrors true to print what has errors, with a stamp on every page
 */
public record PrintRun(String name, String vehicles, Set<SheetKind> kinds, Paper paper, String folder,
        boolean evenWithErrors) {

    public PrintRun {
        Objects.requireNonNull(name);
        vehicles = vehicles.strip();
        kinds = Set.copyOf(kinds);
        Objects.requireNonNull(paper);
        folder = folder.strip();
    }

    /**
     * What came of it.
     *
     * @param files  how many files were written; 0 when errors stand against them
     * @param pages  how many pages they have
     * @param errors how many errors stand against what was asked for
     * @param words  the same in a sentence
     */
    public record Outcome(int files, int pages, int errors, String words) {
    }

    /** The kits, then the harnesses of a project, which can be printed. */
    public static List<String> names(Project project) {
        List<String> names = new ArrayList<>(project.kits().keySet());
        project.harnesses().stream().map(WiringView::name).filter(each -> !names.contains(each)).forEach(names::add);
        return List.copyOf(names);
    }

    /** What keeps this from being tried, in a sentence; empty for nothing. */
    public Optional<String> objection() {
        if (name.isEmpty()) {
            return Optional.of("Choose a kit or a harness.");
        }
        if (kinds.isEmpty()) {
            return Optional.of("Choose at least one document.");
        }
        return folder.isEmpty() ? Optional.of("Name a folder: a new or empty one, or that of an earlier set.")
                : Optional.empty();
    }

    /**
     * Prints and puts the files in place of the earlier set. When it ends otherwise than by returning, the earlier set
     * is as it was.
     *
     * @param project the sources, joined, as they are in the editors
     * @param root    the folder of the project
     * @param printer checks and prints
     * @param reader  reads the condition of the vehicles
     * @throws BadCall if that cannot be printed, or not written there
     * @throws org.loomwright.quantity.Cancelled if it was cancelled
     */
    public Outcome run(Project project, Path root, PrintSheets printer, SourceReader reader, Settings settings,
            Cancel cancel, Progress progress) throws BadCall {
        SetFolder target = SetFolder.at(root, folder);
        Opened opened = new Opened(new ProjectPlace(root.getFileName().toString(), root, "", List.of()), project);
        SheetChoice choice = new SheetChoice(kinds, paper, Optional.empty(), SheetChoice.USUAL_BOARD);
        Printed printed = printer.print(opened, new Asked(name, vehicles, evenWithErrors), reader, choice, settings,
                cancel, progress);
        int errors = printed.errors().size();
        String standing = errors + (errors == 1 ? " error stands" : " errors stand") + " against " + name;
        if (printed.files().isEmpty()) {
            return new Outcome(0, 0, errors, "No sheet was written: " + standing + ".");
        }
        cancel.check();
        Map<String, byte[]> files = new LinkedHashMap<>();
        printed.files().forEach(file -> files.put(file.name(), file.bytes()));
        progress.report("writing " + target.shown(), 0, files.size());
        target.replace(files);
        int pages = printed.files().stream().mapToInt(SheetFile::pages).sum();
        return new Outcome(files.size(), pages, errors, files.size() + " files, " + pages + " pages in "
                + target.shown() + (errors == 0 ? "." : ". Every page has a stamp: " + standing + "."));
    }
}
