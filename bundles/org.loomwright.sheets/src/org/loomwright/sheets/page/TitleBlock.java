// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.Optional;

/**
 * What every page of a set says of the set.
 *
 * @param kit      kit or harness, for people
 * @param revision its revision; empty when it has none
 * @param sources  which sources it was made from
 * @param vehicles the vehicles, in words
 * @param stamp    what stands across every page; empty for nothing
 */
public record TitleBlock(String kit, String revision, String sources, String vehicles, Optional<String> stamp) {
}
