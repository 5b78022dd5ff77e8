// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Span;

/** Describes records by what they say, without where it stands. */
public final class Spanless {

    /** What one line says: the record whose span it is. */
    public record Atom(int line, String said) {
    }

    private Spanless() {
    }

    /** Returns all that a value says; equal for values that differ in places only. */
    public static String describe(Object value) {
        return switch (value) {
            case null -> "null";
            case Span span -> "";
            case Optional<?> optional -> optional.map(each -> "some(" + describe(each) + ")").orElse("none");
            case Collection<?> list -> list.stream().map(Spanless::describe).toList().toString();
            case Expression expression -> expression.words();
            case Record record when isOurs(record) -> {
                StringBuilder text = new StringBuilder(record.getClass().getSimpleName()).append('(');
                for (RecordComponent component : record.getClass().getRecordComponents()) {
                    text.append(component.getName()).append('=').append(describe(get(component, record))).append(' ');
                }
                yield text.append(')').toString();
            }
            default -> value.toString();
        };
    }

    private static boolean isOurs(Record record) {
        return record.getClass().getPackageName().equals("org.loomwright.harness");
    }

    private static Object get(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }

    /**
     * Returns what is said on single lines, by line: every record with a span on one line, and of records with blocks
     * what their first line says. Conditions that come of <em>otherwise</em> are left out, since another line decides
     * them.
     */
    public static List<Atom> atoms(Object value) {
        List<Atom> atoms = new ArrayList<>();
        collect(value, atoms);
        return atoms;
    }

    private static void collect(Object value, List<Atom> atoms) {
        switch (value) {
            case Optional<?> optional -> optional.ifPresent(each -> collect(each, atoms));
            case Collection<?> list -> list.forEach(each -> collect(each, atoms));
            case Record record when isOurs(record) && !(record instanceof Span) -> {
                StringBuilder said = new StringBuilder(record.getClass().getSimpleName());
                int line = line(record);
                for (RecordComponent component : record.getClass().getRecordComponents()) {
                    Object part = get(component, record);
                    if (part instanceof Expression expression) {
                        said.append(expression.offset() < 0 ? "" : " " + expression.words());
                    } else if (!(part instanceof Collection<?>) && (line(part) == line || line(part) == 0)) {
                        said.append(' ').append(component.getName()).append('=').append(describe(part));
                    }
                    collect(part, atoms);
                }
                if (line > 0) {
                    atoms.add(new Atom(line, said.toString()));
                }
            }
            case null, default -> { }
        }
    }

    /** The line on which a value is stated: 0 for one without a place, -1 for one that is spread over lines. */
    private static int line(Object value) {
        return switch (value) {
            case Optional<?> optional -> optional.map(Spanless::line).orElse(0);
            case Span span -> span.line();
            case Record record when isOurs(record) -> {
                for (RecordComponent component : record.getClass().getRecordComponents()) {
                    if (component.getName().equals("span")) {
                        yield line(get(component, record));
                    }
                    if (get(component, record) instanceof Collection<?>) {
                        yield -1;
                    }
                }
                yield 0;
            }
            case null, default -> 0;
        };
    }
}
