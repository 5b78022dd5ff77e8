// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import org.loomwright.condition.Expression;

/**
 * One fact of an element: a value, the condition under which it holds, and where it is stated.
 *
 * @param <T>   what is stated
 * @param value the value
 * @param when  the condition as written; {@link Expression.Always} when none is written
 * @param span  the span of the fact with its condition
 */
public record Fact<T>(T value, Expression when, Span span) {
}
