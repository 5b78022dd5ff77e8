// SPDX-License-Identifier: EPL-2.0
/** Switch positions and engine states: what a platform's modes come to, and the usual ones that it does not write. */
package org.loomwright.electric.mode;
