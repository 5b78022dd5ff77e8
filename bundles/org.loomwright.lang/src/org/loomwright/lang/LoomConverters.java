// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverter;
import org.eclipse.xtext.conversion.impl.AbstractDeclarativeValueConverterService;
import org.eclipse.xtext.conversion.impl.AbstractNullSafeConverter;
import org.eclipse.xtext.nodemodel.INode;

/**
 * What terminals mean. Numbers stay as they are written; within quotes, a backslash stands before a quote and before a
 * backslash, and nowhere else.
 */
public class LoomConverters extends AbstractDeclarativeValueConverterService {
    static final String QUOTED = "STRING";

    @ValueConverter(rule = QUOTED)
    public IValueConverter<String> string() {
        return new AbstractNullSafeConverter<>() {
            @Override
            protected String internalToString(String value) {
                return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
            }

            @Override
            protected String internalToValue(String quoted, INode node) {
                return unquoted(quoted);
            }
        };
    }

    /** Returns the text between the quotes; the closing one may be missing, and other escapes stand for themselves. */
    static String unquoted(String quoted) {
        boolean closed = quoted.length() > 1 && quoted.endsWith("\"");
        String inner = quoted.substring(quoted.isEmpty() ? 0 : 1, closed ? quoted.length() - 1 : quoted.length());
        if (inner.indexOf('\\') < 0) {
            return inner;
        }
        StringBuilder text = new StringBuilder(inner.length());
        for (int i = 0; i < inner.length(); i++) {
            char c = inner.charAt(i);
            boolean escapes = c == '\\' && i + 1 < inner.length()
                    && (inner.charAt(i + 1) == '"' || inner.charAt(i + 1) == '\\');
            text.append(escapes ? inner.charAt(++i) : c);
        }
        return text.toString();
    }
}
