// SPDX-License-Identifier: EPL-2.0
/** What is known about a word: the thing that it names and what was computed of it, with where figures come from. */
package org.loomwright.ide.hover;
