// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import org.loomwright.harness.link.Node;

/**
 * One end of a piece of wire.
 *
 * @param node     where it ends
 * @param title    what is there, for people; empty when nobody says
 * @param housing  name of the housing; empty for an end without one
 * @param terminal name of the terminal; empty when none is stated
 * @param seal     name of the seal; empty without one
 * @param method   name of the splice method; empty elsewhere and when none is stated
 */
public record PieceEnd(Node node, String title, String housing, String terminal, String seal, String method) {

    /** {@code J1:7}, {@code S4}. */
    public String label() {
        return node.label();
    }
}
