// SPDX-License-Identifier: EPL-2.0
/** The server with the test client of the protocol's library, over streams. */
package org.loomwright.ide.lsp;
