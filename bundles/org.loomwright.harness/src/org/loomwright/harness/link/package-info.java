// SPDX-License-Identifier: EPL-2.0
/**
 * Joins the snapshots of single files: finds what each name means and which vehicles each fact holds for.
 *
 * <p>{@link org.loomwright.harness.link.Project#link} is the way in. The views that it makes add to a snapshot's
 * records only what a name or a condition means; what follows from it is computed by the engines.
 */
package org.loomwright.harness.link;
