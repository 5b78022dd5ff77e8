// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.SemanticTokenModifiers;
import org.eclipse.lsp4j.SemanticTokenTypes;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.loomwright.harness.LineIndex;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.outline.Colouring.Tint;
import org.loomwright.ide.outline.Colouring.Tinted;

/** Colours of words in the numbers of the protocol, relative to the word before; none crosses a line. */
final class Tokens {

    private static final List<String> TYPES = List.of(SemanticTokenTypes.Keyword, SemanticTokenTypes.Comment,
            SemanticTokenTypes.String, SemanticTokenTypes.Number, SemanticTokenTypes.Operator,
            SemanticTokenTypes.Type, SemanticTokenTypes.Class, SemanticTokenTypes.Namespace,
            SemanticTokenTypes.EnumMember, SemanticTokenTypes.Enum, SemanticTokenTypes.Variable,
            SemanticTokenTypes.Property, SemanticTokenTypes.Function, SemanticTokenTypes.Parameter);
    static final SemanticTokensLegend LEGEND = new SemanticTokensLegend(TYPES,
            List.of(SemanticTokenModifiers.Declaration));

    private final LineIndex lines;
    private final List<Integer> data = new ArrayList<>();
    private int line;
    private int character;

    private Tokens(LineIndex lines) {
        this.lines = lines;
    }

    static SemanticTokens of(LineIndex lines, List<Tinted> tinted, int from, int to) {
        Tokens tokens = new Tokens(lines);
        for (Tinted each : tinted) {
            String type = type(each);
            if (!type.isEmpty() && each.offset() < to && each.offset() + each.length() > from) {
                tokens.add(each, TYPES.indexOf(type));
            }
        }
        return new SemanticTokens(tokens.data);
    }

    private void add(Tinted tinted, int type) {
        String text = lines.text();
        int end = tinted.offset() + tinted.length();
        for (int at = tinted.offset(); at < end;) {
            int next = text.indexOf('\n', at);
            int stop = next < 0 ? end : Math.min(next, end);
            int length = stop > at && text.charAt(stop - 1) == '\r' ? stop - 1 - at : stop - at;
            if (length > 0) {
                int atLine = lines.line(at) - 1;
                int atCharacter = lines.column(at) - 1;
                data.addAll(List.of(atLine - line, atLine == line ? atCharacter - character : atCharacter, length,
                        type, tinted.declares() ? 1 : 0));
                line = atLine;
                character = atCharacter;
            }
            at = stop + 1;
        }
    }

    private static String type(Tinted tinted) {
        return switch (tinted.tint()) {
            case KEYWORD -> SemanticTokenTypes.Keyword;
            case COMMENT -> SemanticTokenTypes.Comment;
            case TEXT -> SemanticTokenTypes.String;
            case NUMBER, UNIT -> SemanticTokenTypes.Number;
            case MARK -> SemanticTokenTypes.Operator;
            case CHOICE -> SemanticTokenTypes.EnumMember;
            case PIN -> SemanticTokenTypes.Property;
            case WIRE_COLOUR -> SemanticTokenTypes.Parameter;
            case NAME, REFERENCE -> tinted.kind().map(Tokens::type).orElse(tinted.tint() == Tint.NAME
                    ? SemanticTokenTypes.Variable : "");
            case WORD, UNREAD -> "";
        };
    }

    private static String type(Symbol.Kind kind) {
        return switch (kind) {
            case PLATFORM, CATALOGUE, DRAWING, HARNESS, KIT, PRACTICE -> SemanticTokenTypes.Type;
            case PART -> SemanticTokenTypes.Class;
            case ZONE, PLACE, POSITION, GROUND -> SemanticTokenTypes.Namespace;
            case AXIS -> SemanticTokenTypes.Enum;
            case CHOICE, MODE, STATE -> SemanticTokenTypes.EnumMember;
            case PIN, BREAKOUT, BARRIER, BEND, RUN -> SemanticTokenTypes.Property;
            case CIRCUIT, WIRE -> SemanticTokenTypes.Function;
            default -> SemanticTokenTypes.Variable;
        };
    }
}
