// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import org.loomwright.quantity.Cancel;

/** Finds the stations and lengths of a harness. */
@FunctionalInterface
public interface Planner {

    /** Returns the best harness that fits all vehicles; of equal ones that with the nearest breakouts. */
    HarnessPlan plan(PlanProblem problem, Cancel cancel);
}
