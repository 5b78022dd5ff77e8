// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about a harness of ours beside the drawings that it covers, and about a kit beside the kit that it needs: does
 * every branch reach with not too much left over, what keeps that from being proved, is each breakout on its side of a
 * grommet?
 */
package org.loomwright.rules.covering;
