// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;

/**
 * Elements of a text where they stand after one stretch of it was replaced by another: what begins at the end of the
 * stretch or behind it is moved, what holds the stretch gets longer or shorter, and what stands before it is the same
 * object. Works on records alone, of which the elements are made; O(parts of what is given). Immutable.
 */
final class Moved {

    private static final ClassValue<Form> FORMS = new ClassValue<>() {
        @Override
        protected Form computeValue(Class<?> type) {
            return Form.of(type);
        }
    };

    private final int from;
    private final int by;
    private final int lines;

    /**
     * @param from  where the stretch ended
     * @param by    by how many characters what stands behind it moves
     * @param lines and by how many lines
     */
    Moved(int from, int by, int lines) {
        this.from = from;
        this.by = by;
        this.lines = lines;
    }

    /** How records of one class are taken apart and put together; no part of those that can have no place. */
    private record Form(Method[] parts, Constructor<?> whole, boolean expression) {

        private static final Form PLAIN = new Form(new Method[0], null, false);

        static Form of(Class<?> type) {
            String name = type.getPackageName();
            if (!type.isRecord() || name.equals("org.loomwright.quantity")) {
                return PLAIN;
            }
            RecordComponent[] components = type.getRecordComponents();
            Class<?>[] types = Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            try {
                return new Form(Arrays.stream(components).map(RecordComponent::getAccessor).toArray(Method[]::new),
                        type.getDeclaredConstructor(types), Expression.class.isAssignableFrom(type));
            } catch (NoSuchMethodException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    /** Where a stretch of the old text is in the new one. */
    Span span(Span span) {
        if (span.line() == 0 || span.end() < from) {
            return span;
        }
        return span.offset() >= from
                ? new Span(span.file(), span.offset() + by, span.length(), span.line() + lines, span.column())
                : new Span(span.file(), span.offset(), span.length() + by, span.line(), span.column());
    }

    /** An element or a part of one. */
    @SuppressWarnings("unchecked")
    <T> T of(T value) {
        return (T) switch (value) {
            case null -> null;
            case Span span -> span(span);
            case List<?> list -> list(list);
            case Optional<?> optional -> optional(optional);
            case Record composed -> composed(composed);
            default -> value;
        };
    }

    private Object list(List<?> list) {
        List<Object> moved = null;
        for (int i = 0; i < list.size(); i++) {
            Object before = list.get(i);
            Object now = of(before);
            if (now != before && moved == null) {
                moved = new ArrayList<>(list);
            }
            if (moved != null) {
                moved.set(i, now);
            }
        }
        return moved == null ? list : List.copyOf(moved);
    }

    private Object optional(Optional<?> optional) {
        if (optional.isEmpty()) {
            return optional;
        }
        Object now = of((Object) optional.get());
        return now == optional.get() ? optional : Optional.of(now);
    }

    private Object composed(Record composed) {
        Form form = FORMS.get(composed.getClass());
        if (form.parts.length == 0) {
            return composed;
        }
        try {
            Object[] values = new Object[form.parts.length];
            boolean same = true;
            for (int i = 0; i < values.length; i++) {
                Object before = form.parts[i].invoke(composed);
                values[i] = of(before);
                same &= values[i] == before;
            }
            if (form.expression) {
                same &= place(values, (Expression) composed);
            }
            return same ? composed : form.whole.newInstance(values);
        } catch (IllegalAccessException | InstantiationException | InvocationTargetException e) {
            throw new IllegalStateException("a " + composed.getClass().getSimpleName() + " cannot be put together", e);
        }
    }

    /** The last two parts of a condition say where it stands. */
    private boolean place(Object[] values, Expression expression) {
        int offset = expression.offset();
        int length = expression.length();
        if (offset < 0 || offset + length < from) {
            return true;
        }
        if (offset >= from) {
            values[values.length - 2] = offset + by;
        } else {
            values[values.length - 1] = length + by;
        }
        return by == 0;
    }
}
