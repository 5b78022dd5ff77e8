// SPDX-License-Identifier: EPL-2.0
/**
 * Reports kept by content: a project whose bytes did not change, checked by the same build of the program on the same
 * day, is neither read nor checked again. A cache never changes an answer, only how long it takes.
 */
package org.loomwright.app.cache;
