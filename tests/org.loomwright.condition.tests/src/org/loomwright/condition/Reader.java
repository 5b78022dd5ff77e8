// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.Expression.Choice;
import org.loomwright.condition.Expression.Compare;
import org.loomwright.condition.Expression.Not;
import org.loomwright.condition.Expression.Or;
import org.loomwright.condition.Expression.Range;

/** Reads conditions in the syntax of the language, with offsets; just enough for tests, which write what is right. */
final class Reader {
    private static final Pattern TOKEN = Pattern.compile("\\.\\.|[<>!]?=|[<>()]|[A-Za-z0-9]+");

    private record Token(String text, int offset) {
    }

    private final List<Token> tokens = new ArrayList<>();
    private int next;

    private Reader(String text) {
        Matcher matcher = TOKEN.matcher(text);
        while (matcher.find()) {
            tokens.add(new Token(matcher.group(), matcher.start()));
        }
        tokens.add(new Token("", text.length()));
    }

    static Expression expression(String text) {
        Reader reader = new Reader(text);
        Expression expression = reader.or();
        if (reader.next != reader.tokens.size() - 1) {
            throw new IllegalArgumentException("not the whole of: " + text);
        }
        return expression;
    }

    private String peek() {
        return tokens.get(next).text();
    }

    private int start() {
        return tokens.get(next).offset();
    }

    private int lengthFrom(int start) {
        Token last = tokens.get(next - 1);
        return last.offset() + last.text().length() - start;
    }

    private Expression or() {
        int start = start();
        List<Expression> operands = new ArrayList<>(List.of(and()));
        while (peek().equals("or")) {
            next++;
            operands.add(and());
        }
        return operands.size() == 1 ? operands.getFirst() : new Or(operands, start, lengthFrom(start));
    }

    private Expression and() {
        int start = start();
        List<Expression> operands = new ArrayList<>(List.of(not()));
        while (peek().equals("and")) {
            next++;
            operands.add(not());
        }
        return operands.size() == 1 ? operands.getFirst() : new And(operands, start, lengthFrom(start));
    }

    private Expression not() {
        int start = start();
        if (peek().equals("not")) {
            next++;
            Expression operand = not();
            return new Not(operand, start, lengthFrom(start));
        }
        if (peek().equals("(")) {
            next++;
            Expression inner = or();
            take();
            return inner;
        }
        String name = take();
        Relation relation = Relation.ofSymbol(peek()).orElse(null);
        if (relation != null) {
            next++;
            String member = take();
            return new Compare(name, relation, member, start, lengthFrom(start));
        }
        if (next + 1 < tokens.size() && tokens.get(next + 1).text().equals("..")) {
            String from = take();
            next++;
            String to = take();
            return new Range(name, from, to, start, lengthFrom(start));
        }
        return new Choice(name, start, lengthFrom(start));
    }

    private String take() {
        return tokens.get(next++).text();
    }
}
