// SPDX-License-Identifier: EPL-2.0
/**
 * The door for editors that speak the Language Server Protocol (3.17, microsoft.github.io/language-server-protocol):
 * turns its questions into those of {@code Services} and the answers into its types. No other package has these types.
 */
package org.loomwright.ide.lsp;
