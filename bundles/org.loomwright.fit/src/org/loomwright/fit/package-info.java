// SPDX-License-Identifier: EPL-2.0
/**
 * Does a harness fit every vehicle that it is for? {@link org.loomwright.fit.FitProblem} puts together what each
 * covered drawing asks of each branch; {@link org.loomwright.fit.FitJudge} lays the harness as it is written into every
 * vehicle and says where it reaches, by how much, and where it does not.
 *
 * <p>All lengths are whole nanometres. What a drawing does not state is not proved, never guessed.
 */
package org.loomwright.fit;
