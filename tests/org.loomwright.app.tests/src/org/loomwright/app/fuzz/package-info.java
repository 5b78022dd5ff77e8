// SPDX-License-Identifier: EPL-2.0
/** Damages the examples at random and watches that nothing breaks but the text. */
package org.loomwright.app.fuzz;
