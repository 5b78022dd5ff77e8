// SPDX-License-Identifier: EPL-2.0
/** Wire lists taken over. */
package org.loomwright.app.importing;
