// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;

/**
 * A question to which no rule had anything to say, and what the answer rested on.
 *
 * @param question   tells it from the others of a project
 * @param read       names of the drawings and harnesses that rules asked for, besides what the question is about
 * @param everything whether the project as a whole was asked for
 * @param print      stands for all that the answer rests on, see {@link Prints}
 * @param targets    how many targets were looked at
 * @param checks     how many calls of rules were made
 */
public record Silence(String question, List<String> read, boolean everything, String print, long targets,
        long checks) {

    public Silence {
        read = List.copyOf(read);
    }
}
