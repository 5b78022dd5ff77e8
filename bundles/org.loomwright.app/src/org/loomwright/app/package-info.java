// SPDX-License-Identifier: EPL-2.0
/**
 * The use cases: load, check, judge the fit, prove, print, format. Each takes plain values and gives plain values, so
 * that the command line, an editor and a test are doors to the same rooms. What they print is in
 * {@link org.loomwright.app.print}, the bench's lists in {@link org.loomwright.app.sheet}.
 */
package org.loomwright.app;
