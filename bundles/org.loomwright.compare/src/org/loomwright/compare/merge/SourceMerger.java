// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.Optional;

/**
 * Merges two versions of a file that come from a third.
 *
 * <p>Postcondition: where one side is the base, the result is the other side, byte for byte; what one side alone
 * changed is as that side has it; a fact that both changed alike is changed once, and one that they changed otherwise
 * is a conflict. No element of either side is lost unless the other removed it. May be called from several threads. It
 * does not judge the result: whether it makes sense is for a check to say.
 */
@FunctionalInterface
public interface SourceMerger {

    /**
     * Merges.
     *
     * @return the merged text; empty if a version cannot be taken apart, since its braces do not balance
     */
    Optional<Merged> merge(Version base, Version ours, Version theirs, Marks marks);
}
