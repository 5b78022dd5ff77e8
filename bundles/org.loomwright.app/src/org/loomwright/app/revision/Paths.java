// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.util.ArrayDeque;
import java.util.Deque;
import org.loomwright.app.BadCall;

/** Paths inside a revision: folders divided by {@code /}, the top is empty. */
final class Paths {

    private Paths() {
    }

    /**
     * A path without {@code .} and {@code ..}.
     *
     * @param shown the path as the caller wrote it
     * @throws BadCall if it leads above the top
     */
    static String normal(String path, String shown) throws BadCall {
        Deque<String> names = new ArrayDeque<>();
        for (String name : path.replace('\\', '/').split("/")) {
            if (name.equals("..")) {
                if (names.pollLast() == null) {
                    throw new BadCall("'" + shown + "' is outside of the repository");
                }
            } else if (!name.isEmpty() && !name.equals(".")) {
                names.addLast(name);
            }
        }
        return String.join("/", names);
    }

    /** The path of the folder that something is in. */
    static String folder(String path) {
        return path.contains("/") ? path.substring(0, path.lastIndexOf('/')) : "";
    }

    /** A name below a folder. */
    static String below(String folder, String name) {
        return folder.isEmpty() ? name : folder + "/" + name;
    }

    /** A name without its ending. */
    static String stem(String name, String ending) {
        return name.endsWith(ending) && name.length() > ending.length()
                ? name.substring(0, name.length() - ending.length()) : name;
    }
}
