// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.ParserRule;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.quantity.Spelling;
import org.loomwright.lang.text.Problems;

/**
 * A line that cannot be read, and what to say about it.
 *
 * @param tokens its visible tokens; the last one ends the line
 * @param endIndex the index of the last one in the stream
 * @param stopped the index within the line at which the parser stopped
 */
record SyntaxFault(List<CommonToken> tokens, int endIndex, int stopped) {
    private static final int MOST_TOKENS = 300;
    private static final int MOST_WORDS = 8;
    private static final int LONGEST = 40;

    /** Finds the line around the token at which a stream stands. */
    static SyntaxFault at(LineStream stream, IntPredicate endsLine) {
        int start = Math.min(stream.index(), stream.size());
        while (start > 0 && !(isVisible(stream.get(start - 1)) && endsLine.test(stream.get(start - 1).getType()))) {
            start--;
        }
        List<CommonToken> tokens = new ArrayList<>();
        int stopped = 0;
        int end = start;
        for (; end < stream.size(); end++) {
            CommonToken token = (CommonToken) stream.get(end);
            stopped = end == stream.index() ? tokens.size() : stopped;
            if (isVisible(token)) {
                tokens.add(token);
                if (endsLine.test(token.getType())) {
                    break;
                }
            }
        }
        return new SyntaxFault(tokens, end, stopped);
    }

    private static boolean isVisible(Token token) {
        return token.getChannel() == Token.DEFAULT_CHANNEL;
    }

    /** Adds the problem and returns its message. The rule is that of the line. */
    String report(ParserRule rule, Blocks blocks, Problems problems) {
        if (tokens.isEmpty()) {
            return "";
        }
        int line = problems.lines().line(tokens.getFirst().getStartIndex());
        if (problems.isDamaged(line)) {
            return "";
        }
        problems.damage(line);
        int at = Math.min(stopped, tokens.size() - 1);
        Set<AbstractElement> expected = new LinkedHashSet<>();
        if (rule != null && tokens.size() <= MOST_TOKENS && !problems.isFull()) {
            LineMatcher.Match match = LineMatcher.match(rule, tokens, blocks);
            at = Math.min(match.at(), tokens.size() - 1);
            expected.addAll(match.expected());
        }
        return report(at, expected, blocks, problems);
    }

    private String report(int at, Set<AbstractElement> expected, Blocks blocks, Problems problems) {
        CommonToken found = tokens.get(at);
        CommonToken before = at == 0 ? null : tokens.get(at - 1);
        boolean lineEnds = at == tokens.size() - 1;
        List<String> words = expected.stream().map(Expectation::words).distinct().toList();
        List<String> keywords = expected.stream().flatMap(Expectation::keywords).distinct().toList();
        int start = lineEnds && before != null ? before.getStopIndex() + 1 : found.getStartIndex();
        int length = lineEnds ? 0 : found.getStopIndex() + 1 - start;
        Optional<String> meant = lineEnds ? Optional.empty() : Spelling.nearest(found.getText(), keywords);
        String shown = quoted(found);
        if (meant.isPresent()) {
            String message = shown + " is not understood here; did you mean \"" + meant.get() + "\"?";
            problems.add("syntax", start, length, message, "", problems.replace(start, length, meant.get()));
            return message;
        }
        if (isDecimalComma(at) && !keywords.contains(",")) {
            String message = "a decimal is written with a point: " + before.getText() + "."
                    + tokens.get(at + 1).getText();
            problems.add("syntax", start, length, message, "", problems.replace(start, length, "."));
            return message;
        }
        String code = !words.isEmpty() && words.stream().allMatch(Expectation::isName) ? "name-missing" : "syntax";
        String after = before == null ? "" : " after " + quoted(before);
        boolean mayEnd = words.contains(Expectation.LINE_END);
        String message;
        String advice = "";
        if (words.isEmpty() || words.size() > MOST_WORDS || mayEnd && !lineEnds) {
            message = lineEnds ? "the line is not complete" + after : shown + " is not understood" + after;
            advice = words.isEmpty() || words.size() > 3 * MOST_WORDS ? ""
                    : "possible here: " + Expectation.either(words);
        } else {
            message = Expectation.either(words) + " is expected" + after + (lineEnds ? "" : ", not " + shown);
        }
        if (code.equals("name-missing") && !lineEnds && blocks.isKeyword(found.getType())
                && Character.isLetter(found.getText().charAt(0))) {
            advice = shown + " is a word of the language and cannot be a name";
        }
        problems.add(code, start, length, message, advice);
        return message;
    }

    /** Whether a comma stands within a number. */
    private boolean isDecimalComma(int at) {
        return at > 0 && at + 1 < tokens.size() && tokens.get(at).getText().equals(",")
                && Character.isDigit(tokens.get(at - 1).getText().charAt(0))
                && Character.isDigit(tokens.get(at + 1).getText().charAt(0))
                && tokens.get(at + 1).getStartIndex() == tokens.get(at - 1).getStopIndex() + 2;
    }

    private static String quoted(CommonToken token) {
        String text = token.getText();
        String shown = text.length() > LONGEST ? text.substring(0, LONGEST - 3) + "..." : text;
        return shown.startsWith("\"") ? shown : "\"" + shown + "\"";
    }
}
