// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;

/**
 * The two sides of a comparison.
 *
 * @param old     the side that was there before
 * @param changed the side that takes its place
 */
public record Sides(ProjectPlace old, ProjectPlace changed) {

    private static final String RANGE = "..";
    private static final String HEAD = "HEAD";

    /** What version control names for the side on which a file is not there. */
    private static final String NO_FILE = "/dev/null";

    /**
     * Finds the sides that the arguments of a call name: a file, a folder, {@code REV:PATH} from the top of the
     * repository, {@code REV:./PATH} from where the caller is, or {@code REV} for what the other side names at that
     * revision. {@code REV..REV} names both, of the path behind it or of the folder where the caller is; a revision
     * that is left out is {@code HEAD}. {@code /dev/null} is a side on which there is nothing. What exists as a file or
     * folder is never taken for a revision.
     *
     * @param base      the folder that relative paths start from
     * @param arguments one or two
     * @param reader    makes what reads revisions; asked only when there is a revision to read
     * @throws BadCall if there are not two sides, or one of them cannot be found
     */
    public static Sides find(Path base, List<String> arguments, Supplier<RevisionReader> reader) throws BadCall {
        String first = arguments.isEmpty() ? "" : arguments.getFirst();
        Optional<String[]> range = exists(base, first) ? Optional.empty() : range(first);
        if (range.isPresent() && arguments.size() <= 2) {
            String path = arguments.size() == 2 ? arguments.get(1) : ".";
            RevisionReader revisions = reader.get();
            return new Sides(revisions.read(base, range.get()[0], path, false),
                    revisions.read(base, range.get()[1], path, false));
        }
        if (arguments.size() != 2) {
            throw new BadCall("two sides are needed: files, folders, revisions, or one range of revisions REV..REV");
        }
        return new Sides(side(base, first, arguments.get(1), reader), side(base, arguments.get(1), first, reader));
    }

    /** The same with revisions of git. A caller that only knows of it loads nothing of what reads git. */
    public static Sides inGit(Path base, List<String> arguments) throws BadCall {
        return find(base, arguments, () -> new GitReader());
    }

    /**
     * The same sides under another name: for files that somebody else put aside.
     *
     * @throws BadCall if a side is not one file
     */
    public Sides named(String name) throws BadCall {
        return new Sides(named(old, name), named(changed, name));
    }

    private static ProjectPlace named(ProjectPlace place, String name) throws BadCall {
        if (place.inputs().size() != 1) {
            throw new BadCall("--name is for two files");
        }
        Input only = place.inputs().getFirst();
        return new ProjectPlace(place.name().equals("nothing") ? place.name() : name, place.root(), "",
                List.of(new Input(name, only.size(), only.content())));
    }

    private static ProjectPlace side(Path base, String argument, String other, Supplier<RevisionReader> reader)
            throws BadCall {
        if (argument.equals(NO_FILE)) {
            return new ProjectPlace("nothing", base, "", List.of(Input.of("nothing", new byte[0])));
        }
        if (argument.isEmpty() || exists(base, argument)) {
            return ProjectPlace.findOne(base, argument);
        }
        int colon = argument.indexOf(':');
        if (colon > 0) {
            String path = argument.substring(colon + 1);
            boolean relative = path.equals(".") || path.startsWith("./") || path.startsWith("../");
            return reader.get().read(base, argument.substring(0, colon), path, !relative);
        }
        try {
            return reader.get().read(base, argument, exists(base, other) ? other : ".", false);
        } catch (BadCall e) {
            throw new BadCall("'" + argument + "' is no file and no folder, and as a revision: " + e.getMessage());
        }
    }

    private static boolean exists(Path base, String argument) {
        try {
            return !argument.isEmpty() && Files.exists(base.resolve(argument), LinkOption.NOFOLLOW_LINKS);
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /** The two revisions of {@code A..B}. */
    private static Optional<String[]> range(String argument) {
        int at = argument.indexOf(RANGE);
        if (at < 0 || argument.contains("/..") || argument.contains("../") || argument.contains(":")) {
            return Optional.empty();
        }
        String[] ends = {argument.substring(0, at), argument.substring(at + RANGE.length())};
        for (int i = 0; i < ends.length; i++) {
            ends[i] = ends[i].isEmpty() ? HEAD : ends[i];
        }
        return Optional.of(ends);
    }
}
