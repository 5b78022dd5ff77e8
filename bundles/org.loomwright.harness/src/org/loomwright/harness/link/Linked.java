// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Problem;

/**
 * What joining made of one element.
 *
 * @param element  the element
 * @param view     what its names mean; empty when it was not followed to its end
 * @param problems what was found on the way, in that order
 */
record Linked<E, V>(E element, Optional<V> view, List<Problem> problems) {
}
