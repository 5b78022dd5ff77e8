// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Callers see neither the library for boolean functions nor the package that uses it. */
class HiddenLibraryTest {
    private static final List<Class<?>> API = List.of(
            Assignment.class, Assignments.class, Axis.class, Cell.class, Cells.class, Choices.class,
            Choices.Builder.class, Condition.class, Constraint.class, Expression.class, Problem.class, Relation.class,
            Resolution.class, Tally.class, TooManyCombinations.class, Vehicles.class, Wording.class, Work.class);

    @Test
    void signaturesNameOnlyOwnAndJavaTypes() {
        for (Class<?> type : API) {
            assertTrue(Modifier.isPublic(type.getModifiers()), type.getName());
            for (Method method : type.getDeclaredMethods()) {
                if (Modifier.isPublic(method.getModifiers())) {
                    List<Type> types = new ArrayList<>(List.of(method.getGenericParameterTypes()));
                    types.add(method.getGenericReturnType());
                    types.forEach(each -> assertTrue(isOwn(each.getTypeName()), method + " names " + each));
                }
            }
        }
    }

    private static boolean isOwn(String type) {
        return !type.contains("logicng") && !type.contains(".internal.");
    }
}
