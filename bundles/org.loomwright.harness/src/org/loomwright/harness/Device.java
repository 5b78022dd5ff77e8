// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;

/**
 * A thing in the vehicle that a harness connects, or an in-line device of the harness: lamp, motor, switch, relay,
 * fuse, battery. Its pins are those of its catalogue part.
 *
 * @param name     the device's name
 * @param title    words for people, may be empty
 * @param part     the catalogue part that it is, with conditions
 * @param place    where it is; empty when the source does not say
 * @param grounded the ground node that its case is bolted to, when it returns through its case
 * @param returns  true when the source declares a current through it to ground as intended, so that a back-feed
 *                 through it is no fault
 * @param when     the vehicles that have it
 * @param span     the whole element
 */
public record Device(Name name, String title, List<Fact<Ref>> part, Optional<Ref> place, Optional<Ref> grounded,
        boolean returns, Expression when, Span span) {
}
