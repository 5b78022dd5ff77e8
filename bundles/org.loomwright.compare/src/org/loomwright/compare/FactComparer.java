// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import org.loomwright.compare.change.ChangeFinder;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.match.Matcher;
import org.loomwright.compare.match.Matching;
import org.loomwright.harness.link.Project;

/** Compares two sides fact by fact. */
public final class FactComparer implements ProjectComparer {

    @Override
    public Comparison compare(Project old, Project now) {
        return compare(FactSheet.of(old), FactSheet.of(now));
    }

    /** Compares two sides of which the facts are known. */
    public Comparison compare(FactSheet old, FactSheet now) {
        Matching matching = Matcher.match(old, now);
        return new Comparison(old, now, matching, ChangeFinder.find(old, now, matching));
    }
}
