// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit;

import org.loomwright.quantity.Cancel;

/**
 * Lays a harness as it is written into every vehicle geometry that it is for, and says how it comes to lie. Plans
 * nothing and changes no length.
 */
@FunctionalInterface
public interface FitJudge {

    /**
     * Judges a harness.
     *
     * @param problem the harness and what is asked of it
     * @param cancel  asked now and then
     * @throws org.loomwright.quantity.Cancelled if it was stopped
     */
    FitReport judge(FitProblem problem, Cancel cancel);
}
