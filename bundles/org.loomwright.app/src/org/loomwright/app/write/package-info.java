// SPDX-License-Identifier: EPL-2.0
/** Writes files whole or not at all, and never over a source. */
package org.loomwright.app.write;
