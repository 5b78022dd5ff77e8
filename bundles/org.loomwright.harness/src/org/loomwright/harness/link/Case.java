// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import org.loomwright.condition.Condition;
import org.loomwright.harness.Span;

/**
 * One of the values that a fact can have, and the vehicles in which it has it.
 *
 * @param <T>   what is stated
 * @param value the value
 * @param when  the vehicles; within those of the element that the fact belongs to
 * @param span  where it is stated
 */
public record Case<T>(T value, Condition when, Span span) {
}
