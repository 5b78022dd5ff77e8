// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A line of source text taken apart: an element or a fact with its clauses. Works on words alone, so that it is the
 * same for a line that cannot be parsed. Nothing is lost: {@link #text} gives the line back.
 *
 * @param clauses what it states, in order
 * @param brace   the opening brace with what stands before it; empty for none
 * @param rest    what stands behind: white space and a comment
 * @param end     the end of the line: {@code \n}, {@code \r\n} or empty
 */
public record ClauseLine(List<Clause> clauses, String brace, String rest, String end) {

    public ClauseLine {
        clauses = List.copyOf(clauses);
    }

    /** Takes a line apart; it may go on over several lines within a comment. Linear in its length. */
    public static ClauseLine of(String line) {
        String end = line.endsWith("\r\n") ? "\r\n" : line.endsWith("\n") ? "\n" : "";
        LineWords.Read read = LineWords.of(line.substring(0, line.length() - end.length()));
        List<LineWords.Word> words = new ArrayList<>(read.words());
        String brace = "";
        if (words.size() > 1 && words.getLast().text().equals("{")) {
            brace = words.getLast().space() + "{";
            words.removeLast();
        }
        return new ClauseLine(new Splitting(words, !brace.isEmpty()).clauses(), brace, read.rest(), end);
    }

    /**
     * The line with other names in it. The first word, quoted texts and comments stay; so does what stands behind a
     * colon, but for what a waiver accepts there, and where a constraint begins.
     *
     * @param names    what names of other elements become
     * @param own      what the second word becomes, where the line declares an element; empty for a line that does not
     * @param accepted what becomes of the label of the element that a waiver accepts something of
     */
    public static String renamed(String line, Map<String, String> names, Map<String, String> own,
            Map<String, String> accepted) {
        LineWords.Read read = LineWords.of(line);
        boolean isNamed = !read.words().isEmpty()
                && Vocabulary.NAMED_BY_COLON.contains(read.words().getFirst().text());
        boolean isWaiver = isNamed && read.words().getFirst().text().equals("waive");
        StringBuilder renamed = new StringBuilder();
        for (int i = 0; i < read.words().size(); i++) {
            LineWords.Word word = read.words().get(i);
            boolean behind = i > 0 && read.words().get(i - 1).text().equals(":");
            boolean begins = behind && i == 3 && isNamed;
            Map<String, String> by = i == 0 || behind && !isWaiver && !begins || begins && isWaiver ? Map.of()
                    : behind && !begins ? accepted : i == 1 && !own.isEmpty() ? own : names;
            renamed.append(word.space()).append(by.getOrDefault(word.text(), word.text()));
        }
        return renamed.append(read.rest()).toString();
    }

    /** The line. */
    public String text() {
        return clauses.stream().map(each -> each.space() + each.text()).collect(Collectors.joining())
                + brace + rest + end;
    }

    /** What it states with one space between words, without its comment: equal for what differs in layout only. */
    public String words() {
        return clauses.stream().map(each -> (each.space().contains(",") ? ", " : " ") + each.words())
                .collect(Collectors.joining()).strip() + (brace.isEmpty() ? "" : " {");
    }

    /** Whether it opens a block. */
    public boolean opens() {
        return !brace.isEmpty();
    }

    /** What it states under a key. */
    public Optional<Clause> clause(String key) {
        return clauses.stream().filter(each -> each.key().equals(key)).findFirst();
    }

    /** Its first word. */
    public String kind() {
        String words = clauses.isEmpty() ? "" : clauses.getFirst().words();
        return words.contains(" ") ? words.substring(0, words.indexOf(' ')) : words;
    }

    /** True for a line that begins with a fact and has no name. */
    public boolean isFact() {
        return clause(Clause.NAME).isEmpty();
    }

    /** What the line is about, without what it says of it: {@code wire 12a}, {@code terminal 7}, {@code length}. */
    public String subject() {
        boolean first = Vocabulary.BY_FIRST.contains(kind()) || clause("diameter").isPresent();
        return clause(Clause.NAME).map(name -> kind() + " " + name.words())
                .orElseGet(() -> first ? clauses.getFirst().words() : kind());
    }

    /** Whether an element may have any number of lines about that subject. */
    public boolean mayRepeat() {
        return isFact() && Vocabulary.MANY.contains(kind());
    }

    /** Divides the words of a line into clauses. */
    private static final class Splitting {

        private final List<LineWords.Word> words;
        private final boolean opens;
        private final List<Clause> clauses = new ArrayList<>();
        private final Map<String, Integer> seen = new HashMap<>();
        private int from;
        private String key = Clause.KIND;

        Splitting(List<LineWords.Word> words, boolean opens) {
            this.words = words;
            this.opens = opens;
        }

        List<Clause> clauses() {
            if (words.isEmpty()) {
                return List.of();
            }
            int at = 2;
            if (isFact()) {
                key = words.getFirst().text();
            } else if (words.size() > 1) {
                begin(1, Clause.NAME);
                if (isSign(2, ":")) {
                    begin(2, "says");
                    at = 3;
                }
            }
            while (at < words.size()) {
                at = step(at);
            }
            close(words.size());
            return clauses;
        }

        private boolean isFact() {
            String word = words.getFirst().text();
            if (Vocabulary.NAMED_BY_COLON.contains(word)) {
                return !isSign(2, ":");
            }
            boolean element = Vocabulary.EITHER.contains(word)
                    && (opens || words.size() > 2 && words.get(2).isQuoted());
            return Vocabulary.FACTS.contains(word) && !element;
        }

        private boolean isSign(int at, String sign) {
            return words.size() > at && words.get(at).text().equals(sign);
        }

        private int step(int at) {
            LineWords.Word word = words.get(at);
            if (Vocabulary.starts(word, words.get(at - 1), at + 1 < words.size() ? words.get(at + 1) : null)) {
                begin(at, word.text());
                return at + 2;
            }
            if (key.equals("to") && at > from + 1 && (Character.isDigit(word.text().charAt(0))
                    || word.text().equals("unknown")) && Vocabulary.MEASURED.containsKey(words.getFirst().text())) {
                begin(at, Vocabulary.MEASURED.get(words.getFirst().text()));
                return unit(at + 1);
            }
            boolean positional = List.of(Clause.NAME, "title", "size", "colour").contains(key)
                    && from + (key.equals("size") ? 1 : 0) <= at - 1 && !words.getFirst().text().equals(key);
            if (positional && word.isQuoted()) {
                begin(at, "title");
            } else if (positional && !key.equals("size") && Character.isDigit(word.text().charAt(0))
                    && words.get(at - 1).text().charAt(0) != '/') {
                begin(at, "size");
                return unit(at + 1);
            } else if (positional && !key.equals("colour") && word.isWord()
                    && (words.get(at - 1).isWord() || words.get(at - 1).isQuoted())) {
                begin(at, "colour");
            }
            return at + 1;
        }

        /** The place behind the unit of a figure that begins before. */
        private int unit(int from) {
            int at = from;
            while (at < words.size() && (words.get(at).isNumber() || "./-".contains(words.get(at).text()))) {
                at++;
            }
            return at < words.size() && words.get(at).isWord() ? at + 1 : at;
        }

        private void begin(int at, String next) {
            close(at);
            from = at;
            key = next;
        }

        private void close(int to) {
            boolean list = Vocabulary.LISTS.contains(key)
                    || key.equals("of") && words.getFirst().text().equals("group");
            if (!list || to - from < 2 || hasGap(to)) {
                add(key, from, to);
                return;
            }
            add(key, from, from + 1);
            int start = from + 1;
            for (int at = start; at <= to; at++) {
                if (at == to || words.get(at).text().equals(",")) {
                    listed(start, at);
                    start = at + 1;
                }
            }
        }

        /** Whether a comma has nothing before or behind it. */
        private boolean hasGap(int to) {
            boolean gap = isSign(to - 1, ",");
            for (int at = from + 1; at < to; at++) {
                gap |= isSign(at, ",") && (at == from + 1 || isSign(at - 1, ","));
            }
            return gap;
        }

        private void listed(int start, int end) {
            boolean comma = words.get(start - 1).text().equals(",");
            String before = comma ? words.get(start - 1).space() + "," + words.get(start).space()
                    : words.get(start).space();
            int size = clauses.size();
            add(key + " " + words.get(start).text(), start, end);
            clauses.set(size, clauses.get(size).after(before));
        }

        private void add(String name, int start, int end) {
            int number = seen.merge(name, 1, Integer::sum);
            String unique = number == 1 ? name : name + "#" + number;
            StringBuilder text = new StringBuilder();
            for (int at = start; at < end; at++) {
                text.append(at == start ? "" : words.get(at).space()).append(words.get(at).text());
            }
            clauses.add(new Clause(unique, words.get(start).space(), text.toString(), words.subList(start, end).stream()
                    .map(LineWords.Word::text).collect(Collectors.joining(" "))));
        }
    }
}
