// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.network;

import org.loomwright.condition.Condition;

/**
 * Something that is missing or cannot be, and how the computation goes on without it.
 *
 * @param subject what it is about
 * @param when    the vehicles
 * @param words   one sentence without full stop
 */
public record Remark(Subject subject, Condition when, String words) {
}
