// SPDX-License-Identifier: EPL-2.0
/** Tests of the planner: against brute force, against general solvers of integer programs, and against its own theory. */
package org.loomwright.fit.plan;
