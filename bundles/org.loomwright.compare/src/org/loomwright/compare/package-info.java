// SPDX-License-Identifier: EPL-2.0
/**
 * What a revision changes: the elements of two sides are matched, their facts compared, and each change is classed,
 * told with the vehicles that feel it, and followed by its consequences. Works on snapshots alone and reads no file.
 */
package org.loomwright.compare;
