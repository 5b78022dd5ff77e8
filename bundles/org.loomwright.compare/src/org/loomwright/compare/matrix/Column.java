// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

/**
 * One drawing, or one harness of ours.
 *
 * @param name     its name
 * @param title    words for people, may be empty
 * @param vehicles the vehicles that it is for, as written; empty for all of its platform
 * @param sheets   the factory sheets that it was read from, with their issues; empty when it names none
 */
public record Column(String name, String title, String vehicles, String sheets) {
}
