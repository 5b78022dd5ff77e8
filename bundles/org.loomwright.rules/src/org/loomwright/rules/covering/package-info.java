// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about a harness of ours beside the drawings that it covers, and about a kit beside the kit that it needs: does
 * every branch reach, on which lengths nobody knows does that hang, is each breakout on its side of a grommet?
 */
package org.loomwright.rules.covering;
