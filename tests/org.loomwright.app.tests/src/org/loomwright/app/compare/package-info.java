// SPDX-License-Identifier: EPL-2.0
/** Comparisons of whole projects, from text to answer. */
package org.loomwright.app.compare;
