// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.loomwright.app.BadCall;
import org.loomwright.app.MergeSources;
import org.loomwright.app.MergeSources.Outcome;
import org.loomwright.app.load.Loader;
import org.loomwright.app.write.WholeFiles;
import org.loomwright.compare.merge.ElementMerger;
import org.loomwright.compare.merge.Marks;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code merge}: two versions of a file that come from a third become one. */
final class MergeCommand implements Command {

    private static final String TO = "--to";
    private static final String NAME = "--name";
    private static final String MARKS = "--marks";
    private static final int MOST_SIGNS = 200;

    @Override
    public String name() {
        return "merge";
    }

    @Override
    public String summary() {
        return "Merge two versions of a file that come from a third, element by element and fact by fact.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "BASE", "The file as it was before either side changed it."));
        spec.addPositional(Flags.one(1, true, "OURS", "The file as one side has it."));
        spec.addPositional(Flags.one(2, true, "THEIRS", "The file as the other side has it."));
        spec.addOption(option(TO, "FILE", "Write the result there, over OURS if you like (default: standard output)."));
        spec.addOption(option(NAME, "NAME", "What the file is called in messages (default: OURS)."));
        spec.addOption(option(MARKS, "N", "Mark conflicts with so many signs, at least 7 (default)."));
        Flags.quiet(spec);
    }

    private static OptionSpec option(String name, String label, String description) {
        return OptionSpec.builder(name).type(String.class).paramLabel(label).description(description).build();
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        String shown = arguments.matchedOptionValue(NAME, arguments.matchedPositionalValue(1, ""));
        Marks marks = new Marks("ours", "theirs", signs(arguments.matchedOptionValue(MARKS, "")));
        byte[][] versions = new byte[3][];
        for (int i = 0; i < versions.length; i++) {
            versions[i] = bytes(door.folder(), arguments.matchedPositionalValue(i, ""));
        }
        Outcome outcome = new MergeSources(language.reader(), new ElementMerger())
                .merge(shown, versions[0], versions[1], versions[2], marks);
        if (arguments.hasMatchedOption(TO)) {
            write(door.folder(), arguments.matchedOptionValue(TO, ""), outcome.bytes());
        } else {
            door.out().print(outcome.merged().text());
            door.out().flush();
        }
        tell(outcome, shown, arguments.hasMatchedOption("--quiet"), door);
        return outcome.conflicts() > 0 ? Exit.FINDINGS : Exit.FINE;
    }

    private static void tell(Outcome outcome, String shown, boolean quiet, Door door) {
        if (outcome.byLine()) {
            door.err().println(shown + ": the braces of a version do not balance; it was merged line by line");
        }
        outcome.merged().conflicts().forEach(each ->
                door.err().println(shown + ":" + each.line() + ": conflict: " + each.words()));
        if (outcome.conflicts() > 0 && !quiet) {
            door.err().println(shown + ": " + outcome.conflicts()
                    + (outcome.conflicts() == 1 ? " conflict" : " conflicts") + " to settle");
        }
    }

    private static int signs(String number) throws BadCall {
        try {
            int signs = number.isEmpty() ? Marks.USUAL : Integer.parseInt(number);
            if (signs >= Marks.USUAL && signs <= MOST_SIGNS) {
                return signs;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new BadCall(MARKS + " is a number from " + Marks.USUAL + " to " + MOST_SIGNS + ", not '" + number + "'");
    }

    private static byte[] bytes(Path folder, String name) throws BadCall {
        try {
            Path file = folder.resolve(name);
            if (name.isEmpty() || !Files.exists(file)) {
                throw new BadCall("no such file: " + (name.isEmpty() ? "''" : name));
            }
            if (Files.isDirectory(file)) {
                throw new BadCall("a folder cannot be merged, merge file by file: " + name);
            }
            if (Files.size(file) > Loader.LARGEST) {
                throw new BadCall("the file has over " + Loader.LARGEST + " bytes and was not read: " + name);
            }
            return Files.readAllBytes(file);
        } catch (InvalidPathException e) {
            throw new BadCall("not a path: " + name);
        } catch (IOException e) {
            throw new BadCall("cannot read " + name + ": " + (e instanceof AccessDeniedException
                    ? "permission denied" : "input or output error"));
        }
    }

    private static void write(Path folder, String name, byte[] content) throws BadCall {
        Path file;
        try {
            file = folder.resolve(name);
        } catch (InvalidPathException e) {
            throw new BadCall("not a path: " + name);
        }
        if (name.isEmpty() || Files.isDirectory(file)) {
            throw new BadCall(TO + " is a file, not '" + name + "'");
        }
        WholeFiles files = new WholeFiles().add(file, content);
        if (Files.exists(file)) {
            files.rewrite();
        } else {
            files.create();
        }
    }
}
