// SPDX-License-Identifier: EPL-2.0
/** Tests of the planner: against brute force, general solvers of integer programs, and its own theory. */
package org.loomwright.fit.plan;
