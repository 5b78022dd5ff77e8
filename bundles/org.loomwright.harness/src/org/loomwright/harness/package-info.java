// SPDX-License-Identifier: EPL-2.0
/**
 * The harness snapshot: what the sources say, as immutable records with a span for every element and every fact.
 *
 * <p>Names are kept as text. A {@link org.loomwright.harness.Source} is built from one file alone;
 * {@link org.loomwright.harness.link.Project} joins files, finds what a name means and resolves conditions.
 * Everything that may exist in any vehicle is here; what one condition leaves is a question for the engines.
 */
package org.loomwright.harness;
