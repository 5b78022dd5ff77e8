// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import org.loomwright.condition.Condition;

/**
 * One piece of a network.
 *
 * @param index   its place in {@link Schematic#pieces}
 * @param from    one end: of a load the side of the feed, of a source the insulated pole
 * @param to      the other end
 * @param when    the vehicles that have it
 * @param role    what it is there for
 * @param subject what it is
 * @param gate    when it conducts
 * @param model   what it comes to
 * @param rating  its rated current in A; 0 where none is stated
 * @param basis   where rating or resistance come from; {@code from memory} in it means that nobody has looked
 */
public record Piece(int index, Junction from, Junction to, Condition when, Role role, Subject subject, Gate gate,
        Model model, double rating, String basis) {
}
