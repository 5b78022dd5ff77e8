// SPDX-License-Identifier: EPL-2.0
/**
 * What a person or a program reads on standard output: findings with their source lines, the fit matrix, summaries, and
 * the same as JSON. Nothing here judges anything.
 */
package org.loomwright.app.print;
