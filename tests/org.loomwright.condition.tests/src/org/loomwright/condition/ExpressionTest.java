// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.loomwright.condition.Reader.expression;

import java.util.List;
import org.junit.jupiter.api.Test;

class ExpressionTest {
    private static String printed(String text) {
        return expression(text).words();
    }

    @Test
    void printsWhatIsWritten() {
        for (String text : List.of(
                "year <= 1966 and saloon and not fan",
                "year 1964 .. 1966 and (saloon or coupe) and fan and not heater",
                "not (saloon or coupe)",
                "not not fan",
                "not (saloon and fan) or heater",
                "body != estate",
                "year < late66 or late66")) {
            assertEquals(text, printed(text));
        }
    }

    @Test
    void parenthesesStandOnlyWhereTheyAreNeeded() {
        assertEquals("saloon and fan or heater", printed("((saloon and (fan)) or heater)"));
        assertEquals("not fan and saloon", printed("(not (fan)) and saloon"));
        assertEquals("(a or b) and (c or d)", printed("(a or b) and (c or d)"));
    }

    @Test
    void whatIsNestedStaysNested() {
        Expression a = new Expression.Choice("a");
        Expression pair = new Expression.And(List.of(a, new Expression.Choice("b")));
        assertEquals("(a and b) and a", new Expression.And(List.of(pair, a)).words());
        assertEquals(pair.words(), new Expression.Or(List.of(pair)).words());
    }

    @Test
    void emptyListsHaveTheirUsualMeaning() {
        assertEquals("always", new Expression.And(List.of()).words());
        assertEquals("not always", new Expression.Or(List.of()).words());
        assertEquals("always", Expression.allOf(List.of()).words());
        assertEquals("not always", Expression.anyOf(List.of()).words());
        assertEquals("fan", Expression.anyOf(List.of(new Expression.Choice("fan"))).words());
    }

    @Test
    void nodesKnowTheirPlace() {
        Expression.And and = (Expression.And) expression("saloon and not fan and year 1964 .. 1966");
        Expression.Not not = (Expression.Not) and.operands().get(1);
        assertEquals(11, not.offset());
        assertEquals(7, not.length());
        assertEquals(15, not.operand().offset());
        assertEquals(3, not.operand().length());
        assertEquals(23, and.operands().get(2).offset());
        assertEquals(17, and.operands().get(2).length());
        assertEquals(Expression.NOWHERE, new Expression.Choice("fan").offset());
        assertNotEquals(not.operand(), new Expression.Choice("fan"));
        assertEquals(not.operand().words(), new Expression.Choice("fan").words());
    }

    @Test
    void relationsByTheirSymbol() {
        for (Relation relation : Relation.values()) {
            assertEquals(relation, Relation.ofSymbol(relation.symbol()).orElseThrow());
        }
        assertEquals(true, Relation.ofSymbol("==").isEmpty());
    }
}
