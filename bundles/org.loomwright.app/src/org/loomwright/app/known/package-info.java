// SPDX-License-Identifier: EPL-2.0
/**
 * Findings that were there before: a project with a past adopts the checks without mending everything on the first day,
 * and everything new counts.
 */
package org.loomwright.app.known;
