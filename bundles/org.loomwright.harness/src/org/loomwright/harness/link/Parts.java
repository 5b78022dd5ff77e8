// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;

/**
 * The parts that names of a project may mean.
 *
 * @param byName  what the project states and what it uses of the shelf, each with all its facts
 * @param own     the names that the project gives
 * @param damaged the names of parts that it means to state and that could not be read
 * @param shelf   what else lies ready
 */
record Parts(Map<String, Part> byName, Set<String> own, Set<String> damaged, Shelf shelf) {

    /** The part of that name; one that is missing is reported. */
    Optional<Part> find(Ref ref, Problems problems) {
        Part part = byName.get(ref.text());
        if (part == null && !ref.text().isEmpty()) {
            unknown("part", ref, Set.of(), problems);
        }
        return Optional.ofNullable(part);
    }

    /**
     * Reports a name that no part has, nor anything else of some names; it may be a misspelt one of the shelf. Of a
     * part that could not be read nothing is said here: the damage is reported where it is.
     */
    void unknown(String sort, Ref ref, Set<String> others, Problems problems) {
        if (damaged.contains(ref.text())) {
            return;
        }
        Set<String> known = new TreeSet<>(own);
        known.addAll(others);
        problems.unknown(sort, ref, known, shelf.names());
    }
}
