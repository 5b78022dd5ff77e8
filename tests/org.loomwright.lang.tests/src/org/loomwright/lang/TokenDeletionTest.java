// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.loomwright.lang.Spanless.Atom;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;

/**
 * Deletes each token of the corpus in turn. What is wrong then lies on its line, and all other lines still say what
 * they said.
 */
class TokenDeletionTest {
    static final List<String> FILES = Stream.concat(Corpus.FILES.stream(),
            Corpus.FILES.stream().map(name -> "flat " + name)).toList();

    /** A file of the corpus, or the same without any indentation. */
    private static String text(String file) {
        String text = Corpus.text(file.replace("flat ", ""));
        return file.startsWith("flat ") ? text.replaceAll("(?m)^ +", "") : text;
    }

    private record Deletion(String file, int line, String token, boolean firstOnLine, String text) {
        boolean isBrace() {
            return token.equals("{") || token.equals("}");
        }

        @Override
        public String toString() {
            return file + ":" + line + " without " + token + ": " + text.split("\n", -1)[line - 1].strip();
        }
    }

    private static List<Deletion> deletions(String file) {
        String text = text(file);
        InternalLoomLexer lexer = new InternalLoomLexer(new ANTLRStringStream(text));
        List<Deletion> deletions = new ArrayList<>();
        int line = 1;
        int lastLine = 0;
        for (Token each = lexer.nextToken(); each != Token.EOF_TOKEN; each = lexer.nextToken()) {
            CommonToken token = (CommonToken) each;
            int type = token.getType();
            boolean hidden = type == InternalLoomLexer.RULE_WS || type == InternalLoomLexer.RULE_EOL
                    || type == InternalLoomLexer.RULE_SL_COMMENT || type == InternalLoomLexer.RULE_ML_COMMENT;
            if (!hidden) {
                deletions.add(new Deletion(file, line, token.getText(), line != lastLine,
                        text.substring(0, token.getStartIndex()) + text.substring(token.getStopIndex() + 1)));
                lastLine = line;
            }
            line += type == InternalLoomLexer.RULE_EOL ? 1 : 0;
        }
        return deletions;
    }

    /** The last line of the block that a line opens, or the line itself. */
    private static int endOfBlock(String text, int line) {
        String[] lines = text.split("\n", -1);
        if (!lines[line - 1].endsWith("{")) {
            return line;
        }
        int depth = 0;
        for (int i = line - 1; i < lines.length; i++) {
            depth += lines[i].endsWith("{") ? 1 : lines[i].strip().equals("}") ? -1 : 0;
            if (depth == 0) {
                return i + 1;
            }
        }
        return lines.length;
    }

    @ParameterizedTest
    @FieldSource("FILES")
    void problemsLieOnTheLine(String file) {
        List<String> strayed = new ArrayList<>();
        for (Deletion deletion : deletions(file)) {
            TreeSet<Integer> lines = new TreeSet<>();
            Corpus.read(deletion.text).problems().forEach(problem -> lines.add(problem.span().line()));
            boolean onLine = deletion.isBrace() ? lines.size() == 1 && lines.first() >= deletion.line
                    : lines.isEmpty() || lines.equals(new TreeSet<>(List.of(deletion.line)));
            if (!onLine) {
                strayed.add(deletion + " -> " + Corpus.problems(deletion.text));
            }
        }
        assertEquals(List.of(), strayed);
    }

    @ParameterizedTest
    @FieldSource("FILES")
    void otherLinesSayWhatTheySaid(String file) {
        List<Atom> before = Spanless.atoms(Corpus.read(text(file)).elements());
        List<String> lost = new ArrayList<>();
        for (Deletion deletion : deletions(file)) {
            // a line whose first word is gone may be anything, and so may what its block holds
            int end = deletion.firstOnLine && !deletion.isBrace() ? endOfBlock(text(file), deletion.line)
                    : deletion.line;
            List<Atom> after = new ArrayList<>(Spanless.atoms(Corpus.read(deletion.text).elements()));
            for (Atom atom : before) {
                if ((atom.line() < deletion.line || atom.line() > end) && !after.remove(atom)) {
                    lost.add(deletion + " loses " + atom);
                }
            }
            after.removeIf(atom -> atom.line() >= deletion.line && atom.line() <= end);
            after.forEach(atom -> lost.add(deletion + " adds " + atom));
        }
        assertEquals(List.of(), lost);
    }

    /** What may go without a trace: titles, other optional words, points and strokes within figures and colours. */
    @Test
    void deletionsThatLeaveValidText() {
        StringBuilder valid = new StringBuilder();
        for (String file : Corpus.FILES) {
            for (Deletion deletion : deletions(file)) {
                if (Corpus.read(deletion.text).problems().isEmpty()) {
                    valid.append(deletion).append('\n');
                }
            }
        }
        assertEquals(Corpus.resource("deletions-that-leave-valid-text.txt"), valid.toString());
    }

    /** Deletes the ends of lines that hold a fact: the next line then stands behind it. */
    @ParameterizedTest
    @FieldSource("FILES")
    void joinedLines(String file) {
        String[] lines = text(file).split("\n");
        List<Atom> before = Spanless.atoms(Corpus.read(text(file)).elements());
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i + 1 < lines.length; i++) {
            String next = lines[i + 1].strip();
            if (lines[i].isBlank() || lines[i].endsWith("}") || lines[i].startsWith("/") || next.isEmpty()) {
                continue;
            }
            List<String> joined = new ArrayList<>(List.of(lines));
            joined.set(i, lines[i] + " " + next);
            joined.set(i + 1, "");
            String text = String.join("\n", joined) + "\n";
            int line = i + 1;
            Corpus.read(text).problems().stream().filter(each -> each.span().line() != line)
                    .forEach(each -> wrong.add(file + ":" + line + ": " + Corpus.shown(each)));
            boolean tidy = next.equals("}") || lines[i].endsWith("{");
            int end = tidy ? line + 1 : endOfBlock(text(file), line + 1);
            List<Atom> after = Spanless.atoms(Corpus.read(text).elements());
            before.stream().filter(atom -> atom.line() < line || atom.line() > end)
                    .filter(atom -> !after.contains(atom))
                    .forEach(atom -> wrong.add(file + ":" + line + " loses " + atom));
        }
        assertEquals(List.of(), wrong);
    }
}
