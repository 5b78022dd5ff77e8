// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.LineIndex;
import org.loomwright.lang.Corpus;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.LineTokens;
import org.loomwright.lang.text.Problems;

/** How often the parser looks at a token grows with the text, in good texts and in bad ones. */
class ParserGrowthTest {

    private final LineParser parser = Corpus.injector().getInstance(LineParser.class);
    private final Blocks blocks = Corpus.injector().getInstance(Blocks.class);

    /** Counts the looks of the parser, at whatever distance. */
    private final class Counting extends LineStream {
        private long looks;

        Counting(LineTokens tokens, String text) {
            super(tokens, parser.getTokenDefProvider(), text);
        }

        @Override
        public Token LT(int distance) {
            looks++;
            return super.LT(distance);
        }
    }

    private long looks(String text) throws RecognitionException {
        Problems problems = new Problems(new LineIndex("w.loom", text));
        LineTokens tokens = new LineTokens(parser.getLexerProvider().get(), text, blocks, problems);
        Counting stream = new Counting(tokens, text);
        stream.setInitialHiddenTokens("RULE_WS", "RULE_ML_COMMENT", "RULE_SL_COMMENT");
        LineByLineParser lines = new LineByLineParser(stream, parser.getGrammarAccess(), blocks, problems);
        lines.setTokenTypeMap(parser.getTokenDefProvider().getTokenDefMap());
        lines.setSyntaxErrorProvider(parser.getSyntaxErrorProvider());
        lines.setNodeModelBuilder(parser.createNodeModelBuilder());
        lines.setSemanticModelBuilder(parser.getElementFactory());
        lines.parse("LoomFile");
        assertTrue(stream.looks > tokens.tokens().size() / 2, "every token is looked at");
        return stream.looks;
    }

    private static String drawing(int circuits, String between) {
        StringBuilder text = new StringBuilder("drawing d \"Lamps\" of orrin fills front {\n");
        for (int i = 0; i < circuits; i++) {
            text.append("    circuit c").append(i).append(" \"Low beam\" {\n        wire a ").append(i)
                    .append(" mm 14 ga RD/WH from box:").append(i).append(" to lamp:1 when fan and not heater\n")
                    .append(between).append("    }\n");
        }
        return text.append("}\n").toString();
    }

    private void linear(String between) throws RecognitionException {
        long small = looks(drawing(50, between));
        long large = looks(drawing(500, between));
        assertTrue(large <= 10 * 1.2 * small, small + " and " + large);
        assertTrue(large >= 9 * small, "no line is passed over: " + small + " and " + large);
    }

    @Test
    void goodLines() throws RecognitionException {
        linear("");
    }

    @Test
    void linesThatMeanNothing() throws RecognitionException {
        linear("        wire wire ( = 12 mm from\n        frobnicate 4 A\n");
    }

    @Test
    void quotesThatAreNeverClosed() throws RecognitionException {
        linear("        note \"as drawn\n");
    }
}
