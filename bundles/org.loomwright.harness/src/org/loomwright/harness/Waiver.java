// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.time.LocalDate;
import java.util.Optional;
import org.loomwright.condition.Expression;

/**
 * The acceptance of a finding by a person.
 *
 * @param name   the waiver's name, may be absent
 * @param rule   id of the rule
 * @param target the drawing, harness, kit or platform, with {@code element} the element in it
 * @param element the element's name within the target; empty for the target as a whole
 * @param reason why it is accepted
 * @param until  last day on which it holds; empty for no end
 * @param when   the vehicles that it is for
 * @param span   the whole line
 */
public record Waiver(Name name, Name rule, Ref target, String element, String reason, Optional<LocalDate> until,
        Expression when, Span span) implements Element {
}
