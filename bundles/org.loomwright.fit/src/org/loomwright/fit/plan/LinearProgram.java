// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.util.List;

/** A linear program in bounded unknowns, asked for its least objective under ever other inequalities. */
interface LinearProgram {

    /** What came of it. */
    sealed interface Answer {

        /** Figures that fulfil all, with the least objective. */
        record Least(double[] figures) implements Answer {
        }

        /** It is proved that no figures fulfil all. */
        record Nothing() implements Answer {
        }

        /** The solver did not find out: neither that there are figures, nor that there are none. */
        record NotKnown() implements Answer {
        }
    }

    /** Makes programs. */
    @FunctionalInterface
    interface Solver {

        /** A program with an objective, by unknown. */
        LinearProgram minimise(double[] objective);
    }

    /** The figures with the least objective. Never says that there are none where that was not found out. */
    Answer solve(long[] low, long[] high, List<Row> rows);
}
