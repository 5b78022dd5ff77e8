// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.navigate;

import org.loomwright.harness.Span;
import org.loomwright.ide.names.Symbol;

/**
 * Where a thing is declared.
 *
 * @param symbol the thing
 * @param origin the word that was asked about; {@link Span#NONE} when it was found by name
 * @param name   the name where it is declared; the file may be one of the stock
 */
public record Target(Symbol symbol, Span origin, Span name) {
}
