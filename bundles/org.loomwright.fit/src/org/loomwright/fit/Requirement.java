// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;

/** What the vehicles of one column ask in one row. */
public sealed interface Requirement {

    /** The branch must reach; one for each branch of the drawing that goes to the place. */
    record Reach(Demand demand) implements Requirement {
    }

    /**
     * Nothing can be concluded.
     *
     * @param reason      why
     * @param harnessSpan the harness's branch
     * @param factorySpan what the drawing does not state
     */
    record Unproved(Reason reason, Span harnessSpan, Span factorySpan) implements Requirement {
    }

    /**
     * These vehicles do not use the branch: it is capped and parked.
     *
     * @param made        its length; empty when it is unknown
     * @param within      the longest that it may be to be parked; empty when nothing is stated
     * @param harnessSpan the harness's branch
     * @param capSpan     the cap; the branch when none is stated
     * @param stated      true when the harness states a cap for these vehicles
     */
    record Parked(Optional<Length> made, Optional<Length> within, Span harnessSpan, Span capSpan, boolean stated)
            implements Requirement {
    }

    /** This drawing lacks the place, but another covered drawing of the same vehicles has it. */
    record Elsewhere(Span harnessSpan) implements Requirement {
    }

    /** The drawing has a branch to the place and the harness has none in these vehicles. */
    record Unserved(Span factorySpan) implements Requirement {
    }

    /** Why nothing can be concluded. */
    enum Reason {
        /** The harness's branch has no known length. */
        HARNESS_LENGTH("the harness does not state the length of its branch"),
        /** The harness's breakout has no known station. */
        HARNESS_STATION("the harness does not state where its branch leaves the trunk"),
        /** The drawing's branch has no known length. */
        FACTORY_LENGTH("the drawing does not state the length of its branch"),
        /** The drawing's breakout has no known station. */
        FACTORY_STATION("the drawing does not state where its branch leaves the trunk"),
        /** One of the two has no datum, or they are pinned at different places. */
        DATUM("drawing and harness are not counted from the same datum"),
        /** No trunk of the drawing is known to run where the harness's trunk runs. */
        TRUNK("no trunk of the drawing is known to take the way of the harness's trunk"),
        /** The branch leaves a branch that these vehicles do not use, or that may go two ways. */
        PARENT("it leaves a branch whose way in these vehicles is not known");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }
}
