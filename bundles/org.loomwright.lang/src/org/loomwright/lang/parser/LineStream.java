// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import org.eclipse.xtext.parser.antlr.ITokenDefProvider;
import org.eclipse.xtext.parser.antlr.XtextTokenStream;
import org.loomwright.lang.lines.LineTokens;

/** A stream of line tokens that knows the text they come from, which the tokens put in are no part of. */
class LineStream extends XtextTokenStream {
    private final String text;

    LineStream(LineTokens tokens, ITokenDefProvider types, String text) {
        super(tokens, types);
        this.text = text;
    }

    String text() {
        return text;
    }

    @Override
    public String toString() {
        LT(1);
        return text;
    }
}
