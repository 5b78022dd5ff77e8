// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.antlr.runtime.CommonToken;
import org.loomwright.harness.LineIndex;
import org.loomwright.lang.lines.Block;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.lines.LineTokens;
import org.loomwright.lang.lines.RawTokens;
import org.loomwright.lang.lines.TokenTypes;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;
import org.loomwright.lang.text.Problems;
import org.loomwright.lang.words.Slot.Sort;

/**
 * Tells what the words of a text are. Linear in the text; lines that an earlier text had are matched only once. Safe
 * for use by several threads.
 */
public final class WordReader {

    private final Blocks blocks;
    private final TokenTypes types;

    /** Takes the blocks of the language. */
    public WordReader(Blocks blocks) {
        this.blocks = blocks;
        types = blocks.tokenTypes();
    }

    /**
     * What could stand at a place.
     *
     * @param prefix what somebody has begun to write there
     * @param offset of the first character of that
     * @param block  the head of the block around the place; empty at the top
     * @param before the words before it on its line
     * @param rule   the construct of the line as far as its first word tells; else empty
     * @param slots  what could stand there; nothing where the words before it cannot be read
     */
    public record Expected(String prefix, int offset, Optional<Line> block, List<Word> before, String rule,
            List<Slot> slots) {

        public Expected {
            before = List.copyOf(before);
            slots = List.copyOf(slots);
        }
    }

    /** Reads a text. */
    public WordLines read(String text) {
        return read(text, Optional.empty());
    }

    /** Reads a text that is much like an earlier one. */
    public WordLines read(String text, Optional<WordLines> before) {
        if (before.isPresent() && before.get().text().equals(text)) {
            return before.get();
        }
        return new Reading(blocks, text, before).read();
    }

    /** The sort of a block by its head; the file itself without one. */
    private Block sort(Optional<Line> head) {
        return head.isEmpty() ? blocks.file() : blocks.block(head.get().opens());
    }

    /**
     * Finds what could stand at a place, judging by what stands before it on its line. The word that the place is in
     * or behind is what somebody has begun to write.
     */
    public Expected expected(WordLines lines, int offset) {
        String text = lines.text();
        int start = text.lastIndexOf('\n', offset - 1) + 1;
        for (int at = start; at < offset; at++) {
            char c = text.charAt(at);
            if (c == '{' || c == '}') {
                start = at + 1; // quoted braces are rare, and a wrong guess offers too much only
            }
        }
        int word = offset;
        while (word > start && (isOfWord(text.charAt(word - 1)) || word - 1 > start && text.charAt(word - 1) == '-'
                && Character.isLetter(text.charAt(word - 2)))) {
            word--;
        }
        Optional<Line> block = lines.blockAt(start).filter(head -> head.end() <= offset);
        List<CommonToken> tokens = tokens(text.substring(start, word));
        Set<Slot> slots = new LinkedHashSet<>();
        List<Word> before = new ArrayList<>();
        String rule = "";
        if (tokens.isEmpty()) {
            sort(block).starters().values().forEach(each -> slots.add(new Slot(Sort.KEYWORD, each.rule(), "", "", "",
                    each.word())));
        } else {
            Block.Starter starter = sort(block).starter(tokens.getFirst().getType());
            if (starter != null) {
                rule = starter.rule();
                LineWords.Match match = LineWords.match(blocks.rule(rule), tokens, blocks, new LineWords.Slots());
                for (int i = 0; i < tokens.size(); i++) {
                    before.add(new Word(match.slots().get(i), start + tokens.get(i).getStartIndex(),
                            tokens.get(i).getText()));
                }
                if (before.stream().noneMatch(each -> each.slot() == Slot.UNREAD)) {
                    slots.addAll(match.expected());
                }
            }
        }
        return new Expected(text.substring(word, offset), word, block, before, rule, new ArrayList<>(slots));
    }

    private static boolean isOfWord(char c) {
        return Character.isLetterOrDigit(c) || c == '_' || c == '\u00b0';
    }

    /** The visible words of a piece of a line. */
    private List<CommonToken> tokens(String piece) {
        Problems unused = new Problems(new LineIndex("", piece));
        return RawTokens.of(new InternalLoomLexer(), piece, types, unused).stream()
                .filter(token -> types.visible(token.getType())).toList();
    }

    /** One reading of one text. */
    private static final class Reading {

        private record Key(String rule, String line) {
        }

        private final Blocks blocks;
        private final TokenTypes types;
        private final String text;
        private final Map<Key, Line> known = new HashMap<>();
        private final LineWords.Slots slots = new LineWords.Slots();
        private final List<Line> lines = new ArrayList<>();
        private final List<Integer> open = new ArrayList<>();
        private final List<WordLines.Stretch> comments = new ArrayList<>();
        private int looked;

        Reading(Blocks blocks, String text, Optional<WordLines> before) {
            this.blocks = blocks;
            this.types = blocks.tokenTypes();
            this.text = text;
            before.ifPresent(lines -> lines.lines().forEach(line -> known.put(key(line, lines.text()), line)));
        }

        private Key key(Line line, String of) {
            return line.words().isEmpty() ? new Key("", "") : new Key(line.block() + line.rule(),
                    of.substring(line.offset(), line.words().getLast().end()));
        }

        WordLines read() {
            Problems unused = new Problems(new LineIndex("", text));
            List<CommonToken> tokens = new LineTokens(new InternalLoomLexer(), text, blocks, unused).tokens();
            List<CommonToken> line = new ArrayList<>();
            for (CommonToken token : tokens) {
                int type = token.getType();
                if (type == types.comment() || type == types.longComment()) {
                    comments.add(new WordLines.Stretch(token.getStartIndex(), token.getStopIndex() + 1));
                } else if (type == types.endOfLine()) {
                    add(line, -1);
                } else if (type == types.open()) {
                    add(line, token.getStopIndex() + 1);
                } else if (type == types.close()) {
                    add(line, -1);
                    close(token.getStopIndex() + 1);
                } else if (types.visible(type)) {
                    line.add(token);
                }
            }
            add(line, -1);
            while (!open.isEmpty()) {
                close(text.length());
            }
            return new WordLines(text, lines, comments, looked);
        }

        private String block() {
            return open.isEmpty() ? blocks.file().rule() : lines.get(open.getLast()).opens();
        }

        private void add(List<CommonToken> tokens, int brace) {
            if (tokens.isEmpty()) {
                return;
            }
            int offset = tokens.getFirst().getStartIndex();
            int last = tokens.getLast().getStopIndex() + 1;
            var starter = blocks.block(block()).starter(tokens.getFirst().getType());
            String rule = starter == null ? "" : starter.rule();
            boolean opens = brace >= 0 && starter != null && starter.opens().isPresent();
            List<Word> words = new ArrayList<>();
            boolean read = words(rule, offset, last, tokens, words);
            int end = opens ? Math.max(last, brace) : last;
            lines.add(new Line(lines.size(), open.isEmpty() ? -1 : open.getLast(), block(), rule,
                    opens ? starter.opens().orElseThrow() : "", offset, end, end, read, List.copyOf(words)));
            if (opens) {
                open.add(lines.size() - 1);
            }
            tokens.clear();
        }

        private boolean words(String rule, int offset, int last, List<CommonToken> tokens, List<Word> words) {
            if (rule.isEmpty()) {
                words.add(new Word(Slot.UNREAD, offset, text.substring(offset, last)));
                return false;
            }
            Line same = known.get(new Key(block() + rule, text.substring(offset, last)));
            if (same != null) {
                same.words().forEach(word -> words.add(word.moved(offset - same.offset())));
                return same.read();
            }
            looked++;
            LineWords.Match match = LineWords.match(blocks.rule(rule), tokens, blocks, slots);
            for (int i = 0; i < tokens.size(); i++) {
                CommonToken token = tokens.get(i);
                words.add(new Word(match.slots().get(i), token.getStartIndex(),
                        text.substring(token.getStartIndex(), token.getStopIndex() + 1)));
            }
            return match.complete();
        }

        private void close(int end) {
            if (open.isEmpty()) {
                return;
            }
            int at = open.removeLast();
            Line head = lines.get(at);
            lines.set(at, new Line(head.index(), head.parent(), head.block(), head.rule(), head.opens(),
                    head.offset(), head.end(), Math.max(head.end(), end), head.read(), head.words()));
        }
    }
}
