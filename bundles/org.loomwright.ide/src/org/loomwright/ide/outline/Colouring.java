// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/** What each word of a file is, for colours. Linear in its words; stateless. */
public final class Colouring {

    private Colouring() {
    }

    /** What a word is. */
    public enum Tint {
        KEYWORD, NAME, REFERENCE, CHOICE, PIN, TEXT, NUMBER, UNIT, WIRE_COLOUR, WORD, MARK, COMMENT, UNREAD
    }

    /**
     * A stretch of text and what it is.
     *
     * @param offset   of its first character
     * @param length   in UTF-16 units; a comment may run over several lines
     * @param tint     what it is
     * @param kind     for a name or a reference: of what; empty where that is not known
     * @param declares whether it gives a name
     */
    public record Tinted(int offset, int length, Tint tint, Optional<Symbol.Kind> kind, boolean declares) {
    }

    /** The words and comments of a file, in order. */
    public static List<Tinted> of(Moment moment, String file) {
        return of(moment, file, 0, Integer.MAX_VALUE);
    }

    /** Those of the lines and comments that touch a stretch, in order. */
    public static List<Tinted> of(Moment moment, String file, int from, int to) {
        WordLines lines = moment.words(file);
        List<Tinted> tinted = new ArrayList<>();
        for (Line line : lines.lines()) {
            if (line.end() < from || line.offset() > to) {
                continue;
            }
            for (Word word : line.words()) {
                Tint tint = tint(word);
                boolean named = tint == Tint.NAME || tint == Tint.REFERENCE || tint == Tint.CHOICE;
                Optional<Symbol.Kind> kind = named ? moment.names().meaning(word, line, lines).map(Symbol::kind)
                        : Optional.empty();
                tinted.add(new Tinted(word.offset(), word.text().length(), tint, kind, tint == Tint.NAME));
            }
        }
        lines.comments().stream().filter(each -> each.end() >= from && each.offset() <= to).forEach(each ->
                tinted.add(new Tinted(each.offset(), each.end() - each.offset(),
                Tint.COMMENT, Optional.empty(), false)));
        tinted.sort(Comparator.comparingInt(Tinted::offset));
        return List.copyOf(tinted);
    }

    private static Tint tint(Word word) {
        return switch (word.slot().sort()) {
            case KEYWORD -> Tint.KEYWORD;
            case NAME -> Tint.NAME;
            case REFERENCE -> switch (word.slot().target()) {
                case "Choice", "Axis", "Member" -> Tint.CHOICE;
                default -> Tint.REFERENCE;
            };
            case PIN -> Tint.PIN;
            case TEXT -> Tint.TEXT;
            case NUMBER -> Tint.NUMBER;
            case UNIT -> Tint.UNIT;
            case COLOUR -> Tint.WIRE_COLOUR;
            case WORD -> Tint.WORD;
            case MARK -> Tint.MARK;
            case UNREAD -> Tint.UNREAD;
        };
    }
}
