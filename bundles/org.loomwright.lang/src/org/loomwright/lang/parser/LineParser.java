// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import com.google.inject.Inject;
import org.antlr.runtime.CharStream;
import org.antlr.runtime.RecognitionException;
import org.eclipse.xtext.nodemodel.impl.NodeModelBuilder;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.ParseException;
import org.loomwright.harness.LineIndex;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.LineTokens;
import org.loomwright.lang.parser.antlr.LoomParser;
import org.loomwright.lang.text.Problems;

/**
 * Parses texts of the language. Stateless once it is injected, so one instance may serve any number of threads; every
 * text gets its own lexer, token stream and generated parser.
 */
public class LineParser extends LoomParser {
    private final Blocks blocks;

    /** What is not known by its blocks is set, by an injector or by hand. */
    @Inject
    public LineParser(Blocks blocks) {
        this.blocks = blocks;
    }

    /**
     * Parses a text and adds what is wrong with its lines to the problems.
     *
     * @return the tree; null when the text is nested too deep to be parsed
     */
    public IParseResult parse(Problems problems) {
        LineTokens tokens = tokens(problems);
        return tokens.isTooDeep() ? null : parse(getDefaultRuleName(), tokens, problems, createNodeModelBuilder(), 0);
    }

    @Override
    protected IParseResult doParse(String rule, CharStream chars, NodeModelBuilder builder, int lookAhead) {
        String text = chars.size() == 0 ? "" : chars.substring(0, chars.size() - 1);
        Problems problems = new Problems(new LineIndex("", text));
        IParseResult tree = parse(rule, tokens(problems), problems, builder, lookAhead);
        return new LineParseResult(tree, problems.sorted());
    }

    private LineTokens tokens(Problems problems) {
        return new LineTokens(getLexerProvider().get(), problems.lines().text(), blocks, problems);
    }

    private IParseResult parse(String rule, LineTokens tokens, Problems problems, NodeModelBuilder builder,
            int lookAhead) {
        LineStream stream = new LineStream(tokens, getTokenDefProvider(), tokens.text());
        stream.initCurrentLookAhead(lookAhead);
        setInitialHiddenTokens(stream);
        LineByLineParser parser = new LineByLineParser(stream, getGrammarAccess(), blocks, problems);
        parser.setTokenTypeMap(getTokenDefProvider().getTokenDefMap());
        parser.setSyntaxErrorProvider(getSyntaxErrorProvider());
        parser.setNodeModelBuilder(builder);
        parser.setSemanticModelBuilder(getElementFactory());
        try {
            return parser.parse(rule);
        } catch (RecognitionException e) {
            throw new ParseException("the parser gave up", e);
        }
    }

    @Override
    protected NodeModelBuilder createNodeModelBuilder() {
        return new NodeModelBuilder();
    }

    /** What a token is depends on the lines before it, so a part of a text is never parsed by itself. */
    @Override
    protected boolean isReparseSupported() {
        return false;
    }
}
