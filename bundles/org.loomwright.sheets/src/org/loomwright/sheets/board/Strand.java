// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

/**
 * A trunk or branch that is to be laid on a board.
 *
 * @param name    its name
 * @param parent  the strand that it leaves; empty for the datum
 * @param station where it leaves that one, in mm from that one's start
 * @param length  its length in mm, at least 0
 */
public record Strand(String name, String parent, double station, double length) {
}
