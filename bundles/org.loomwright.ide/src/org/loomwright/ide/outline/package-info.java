// SPDX-License-Identifier: EPL-2.0
/** The shape of a file: what is in what, what can be folded, what each word is. */
package org.loomwright.ide.outline;
