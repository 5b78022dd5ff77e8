// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import org.antlr.runtime.BitSet;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.IntStream;
import org.antlr.runtime.MismatchedTokenException;
import org.antlr.runtime.NoViableAltException;
import org.antlr.runtime.RecognitionException;
import org.antlr.runtime.Token;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.SyntaxErrorMessage;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.LineProblems;
import org.loomwright.lang.parser.antlr.internal.InternalLoomParser;
import org.loomwright.lang.services.LoomGrammarAccess;
import org.loomwright.lang.text.Problems;

/**
 * The generated parser with an error recovery that stays on the line. A rule that reads part of a line gives up its
 * part and skips to what may follow it, or to the end of the line; a rule that reads a whole line skips that line. A
 * head of a block skips to the brace, so that the block is read. One problem is reported a line.
 */
final class LineByLineParser extends InternalLoomParser {
    private final LineStream tokens;
    private final Blocks blocks;
    private final Problems problems;
    private final int endOfLine;
    private final int open;
    private final int close;
    private int explainedUpTo = -1;

    LineByLineParser(LineStream tokens, LoomGrammarAccess grammar, Blocks blocks, Problems problems) {
        super(tokens, grammar);
        this.tokens = tokens;
        this.blocks = blocks;
        this.problems = problems;
        endOfLine = blocks.terminal("EOL");
        open = blocks.type("{");
        close = blocks.type("}");
    }

    private boolean endsLine(int type) {
        return type == endOfLine || type == open || type == close || type == Token.EOF;
    }

    /** The rule that was called for a node, or null if the node stands for something else. */
    private static ParserRule called(ICompositeNode node) {
        EObject element = node.getGrammarElement();
        return element instanceof ParserRule rule ? rule
                : element instanceof RuleCall call && call.getRule() instanceof ParserRule rule ? rule : null;
    }

    private boolean readsWholeLine(ICompositeNode node) {
        ParserRule rule = called(node);
        return rule != null && blocks.reachesLineEnd(rule.getName());
    }

    @Override
    public void recover(IntStream input, RecognitionException fault) {
        reportError(fault);
        beginResync();
        if (readsWholeLine(getCurrentNode())) {
            skipLine();
        } else {
            BitSet follow = computeContextSensitiveRuleFOLLOW();
            boolean stuck = state.lastErrorIndex == input.index();
            while (!endsLine(input.LA(1)) && (stuck || !follow.member(input.LA(1)))) {
                input.consume();
                stuck = false;
            }
        }
        state.lastErrorIndex = input.index();
        endResync();
    }

    /** Skips to the end of the line and past it, with the block that the line opens. */
    private void skipLine() {
        skipToLineEnd();
        int depth = 0;
        do {
            int type = tokens.LA(1);
            depth += type == open ? 1 : type == close ? -1 : 0;
            if (type == Token.EOF || depth < 0) {
                return;
            }
            tokens.consume();
        } while (depth > 0);
    }

    private void skipToLineEnd() {
        while (!endsLine(tokens.LA(1))) {
            tokens.consume();
        }
    }

    /** A line end or a brace is never thrown away for the sake of what stands behind it. */
    @Override
    public boolean mismatchIsUnwantedToken(IntStream input, int type) {
        return !endsLine(input.LA(1)) && !endsLine(type) && super.mismatchIsUnwantedToken(input, type);
    }

    /** An end of line or a brace is never taken for granted. */
    @Override
    protected Object recoverFromMismatchedToken(IntStream input, int type, BitSet follow) throws RecognitionException {
        if (type == endOfLine && startsLine(tokens.LT(1))) {
            return null;
        }
        if (type == endOfLine && !endsLine(input.LA(1))) {
            reportError(new MismatchedTokenException(type, input));
            skipToLineEnd();
            if (input.LA(1) == endOfLine) {
                Object matched = getCurrentInputSymbol(input);
                input.consume();
                return matched;
            }
        }
        return super.recoverFromMismatchedToken(input, type, follow);
    }

    /** Whether a token behind a complete line would start the next one; says so. The rest is then read as that. */
    private boolean startsLine(Token token) {
        ICompositeNode node = getCurrentNode();
        while (node.getParent() != null && !readsWholeLine(node)) {
            node = node.getParent();
        }
        ParserRule line = called(node);
        boolean starts = line != null && blocks.inOrder().anyMatch(block -> block.starter(token.getType()) != null
                && block.starters().values().stream().anyMatch(other -> other.rule().equals(line.getName())));
        if (starts) {
            new LineProblems(problems).joined((CommonToken) token);
            problems.damage(problems.lines().line(((CommonToken) token).getStartIndex()));
        }
        return starts;
    }

    /** After the head of a block, whatever stands before the brace or the end of the line is too much. */
    @Override
    protected void afterParserOrEnumRuleCall() {
        ParserRule rule = called(getCurrentNode());
        boolean head = rule != null && rule.isFragment();
        super.afterParserOrEnumRuleCall();
        if (head && !endsLine(tokens.LA(1))) {
            if (!startsLine(tokens.LT(1))) {
                reportError(new NoViableAltException("", 0, 0, tokens));
            }
            skipToLineEnd();
            appendSkippedTokens();
        }
    }

    /** Explains the first fault of a line; what else goes wrong on it mostly follows from that. */
    @Override
    public SyntaxErrorMessage getSyntaxErrorMessage(RecognitionException fault, String[] tokenNames) {
        super.getSyntaxErrorMessage(fault, tokenNames);
        tokens.LT(1);
        if (tokens.index() < explainedUpTo) {
            return null;
        }
        SyntaxFault line = SyntaxFault.at(tokens, this::endsLine);
        explainedUpTo = line.endIndex() + 1;
        ICompositeNode node = getCurrentNode();
        while (node.getParent() != null && !readsWholeLine(node)) {
            node = node.getParent();
        }
        return new SyntaxErrorMessage(line.report(called(node), blocks, problems), "syntax");
    }
}
