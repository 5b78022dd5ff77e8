// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import org.antlr.runtime.ANTLRStringStream;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;

/** The numbers that the generated lexer gives to the tokens that structure a text. */
public record TokenTypes(int open, int close, int openBracket, int closeBracket, int not) {
    private static final int END_OF_LINE = InternalLoomLexer.RULE_EOL;
    private static final int SPACE = InternalLoomLexer.RULE_WS;
    private static final int LONG_COMMENT = InternalLoomLexer.RULE_ML_COMMENT;
    private static final int COMMENT = InternalLoomLexer.RULE_SL_COMMENT;

    /** Asks the lexer for the numbers of the keywords, which have no constants. */
    public static TokenTypes ofLexer() {
        return new TokenTypes(type("{"), type("}"), type("("), type(")"), type("not"));
    }

    private static int type(String keyword) {
        return new InternalLoomLexer(new ANTLRStringStream(keyword)).nextToken().getType();
    }

    public int endOfLine() {
        return END_OF_LINE;
    }

    public int space() {
        return SPACE;
    }

    public int badLine() {
        return InternalLoomLexer.RULE_BAD_LINE;
    }

    public int string() {
        return InternalLoomLexer.RULE_STRING;
    }

    public int integer() {
        return InternalLoomLexer.RULE_INT;
    }

    public int code() {
        return InternalLoomLexer.RULE_CODE;
    }

    public int word() {
        return InternalLoomLexer.RULE_ID;
    }

    public int other() {
        return InternalLoomLexer.RULE_ANY_OTHER;
    }

    public int longComment() {
        return LONG_COMMENT;
    }

    public int comment() {
        return COMMENT;
    }

    /** Returns whether a token of a type is something that the reader of a line would see as part of it. */
    public boolean visible(int type) {
        return type != SPACE && type != LONG_COMMENT && type != COMMENT && type != END_OF_LINE;
    }
}
