// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import java.util.Set;
import org.loomwright.harness.Source;

/**
 * Parts that lie ready for every project and are fetched by name. A part of the project hides one of the same name.
 * Equal questions get equal answers.
 */
public interface Shelf {

    /** A shelf with nothing on it. */
    Shelf EMPTY = new Shelf() {
        @Override
        public Set<String> names() {
            return Set.of();
        }

        @Override
        public List<Source> take(Set<String> names) {
            return List.of();
        }
    };

    /** The names of all parts on it. Asked for only when a name means nothing in the project. */
    Set<String> names();

    /**
     * The sources of some parts, and of those that these are like. Names that no part on the shelf has are passed over;
     * a source may hold more parts than were asked for.
     *
     * @param names the names of parts, at least one
     */
    List<Source> take(Set<String> names);
}
