// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.runtime.ANTLRStringStream;
import org.antlr.runtime.CharStream;
import org.antlr.runtime.CommonToken;
import org.antlr.runtime.Token;
import org.antlr.runtime.TokenSource;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.loomwright.harness.LineIndex;
import org.loomwright.lang.lines.Block.Starter;
import org.loomwright.lang.text.Problems;
import org.loomwright.quantity.Spelling;

/**
 * The tokens that the parser sees. Guarantees, whatever the text: braces balance; every line that holds something and
 * does not end in a brace ends in an EOL token; every line starts with a word that may start it where it stands, or is
 * one BAD_LINE token; a block stands only where it may. What had to be mended for this is reported as a problem.
 *
 * <p>A line that cannot start where it stands tells which brace was lost: one that may start in the block of the header
 * before it, that the header lost its opening brace; one that may start further out, that a closing brace was lost,
 * unless its indentation says that it merely stands in the wrong place. A misspelt first word is read as the word that
 * was meant. O(tokens); not thread-safe.
 */
public final class LineTokens implements TokenSource {
    private final Blocks blocks;
    private final TokenTypes types;
    private final LineIndex lines;
    private final CharStream chars;
    private final List<CommonToken> raw;
    private final List<CommonToken> out;
    private final OpenBlocks open;
    private final LineProblems reports;
    private final boolean tooDeep;
    private int next;

    /** The line that is being read: where its tokens start in the output, its first one, and what that starts. */
    private CommonToken first;
    private int firstAt;
    private Starter starter;
    private boolean freshLine = true;
    private LostBrace pending;
    private int served;

    public LineTokens(Lexer lexer, String text, Blocks blocks, Problems problems) {
        this.blocks = blocks;
        types = blocks.tokenTypes();
        lines = problems.lines();
        String read = Conflicts.masked(problems);
        chars = new ANTLRStringStream(read);
        raw = RawTokens.of(lexer, read, types, problems);
        out = new ArrayList<>(raw.size() + 16);
        reports = new LineProblems(problems);
        Nesting nesting = Nesting.of(raw, types);
        open = new OpenBlocks(blocks.file(), nesting.excess());
        problems.balanced(nesting.excess() == 0);
        tooDeep = nesting.isTooDeep();
        if (tooDeep) {
            nesting.report(problems);
            raw.forEach(token -> token.setType(types.space()));
            out.addAll(raw);
        } else {
            structure();
        }
    }

    /** Returns whether braces or parentheses are nested so deep that nothing was read. */
    public boolean isTooDeep() {
        return tooDeep;
    }

    /** Returns the tokens in order, hidden ones included. */
    public List<CommonToken> tokens() {
        return out;
    }

    public String text() {
        return lines.text();
    }

    @Override
    public Token nextToken() {
        return served < out.size() ? out.get(served++) : Token.EOF_TOKEN;
    }

    @Override
    public String getSourceName() {
        return lines.file();
    }

    private void structure() {
        while (next < raw.size()) {
            CommonToken token = raw.get(next++);
            int type = token.getType();
            if (type == types.endOfLine()) {
                newLine(token);
            } else if (type == types.open()) {
                opening(token);
            } else if (type == types.close()) {
                closing(token);
            } else {
                if (first == null && types.visible(type)) {
                    begin(token);
                }
                out.add(token);
            }
        }
        end();
    }

    private int column(CommonToken token) {
        return freshLine ? lines.column(token.getStartIndex()) : -1;
    }

    // ------------------------------------------------------------ the first word of a line

    private void begin(CommonToken token) {
        int type = token.getType();
        if (!freshLine) {
            reports.braceOnLine(token);
        }
        int column = column(token);
        if (pending != null && pending.claims(type, column, open)) {
            openLost();
        } else if (open.mayStandHere(type)) {
            while (open.standsOutside(type, column)) {
                closeLost(token, type);
            }
        } else if (open.mayStandFurtherOut(type) && open.showsLostClosing(column) && misspelt(token).isEmpty()) {
            closeLost(token, type);
        }
        if (pending != null && !pending.holds(type)) {
            pending = null;
        }
        open.line(column);
        first = token;
        firstAt = out.size();
        starter = open.current().starter(type);
        freshLine = false;
    }

    private Optional<Starter> misspelt(CommonToken token) {
        Block block = open.current();
        return token.getType() != types.word()
                ? Optional.empty()
                : Spelling.nearest(token.getText(), block.words()).map(word -> block.starter(blocks.type(word)));
    }

    // ------------------------------------------------------------ the end of a line

    private void newLine(CommonToken token) {
        if (first == null) {
            token.setType(types.space());
            out.add(token);
        } else {
            endOfFact(token, true);
        }
        freshLine = true;
    }

    /** Ends the line with an EOL token, one of the text or one that is put in. */
    private void endOfFact(CommonToken endOfLine, boolean mayOpen) {
        CommonToken last = lastVisible();
        if (starter == null) {
            unreadable(last);
        }
        if (mayOpen && starter != null && starter.opens().isPresent()) {
            pending = new LostBrace(blocks.block(starter.opens().get()), first, columnOf(first), out.size(), last);
        }
        out.add(endOfLine);
        first = null;
    }

    private int columnOf(CommonToken token) {
        return lines.column(token.getStartIndex());
    }

    private CommonToken lastVisible() {
        int at = out.size() - 1;
        while (!types.visible(out.get(at).getType())) {
            at--;
        }
        return out.get(at);
    }

    private CommonToken inserted(int type, int offset) {
        return new CommonToken(chars, type, Token.DEFAULT_CHANNEL, offset, offset - 1);
    }

    /** Makes one token of the line; a misspelt first word is read as the one that was meant instead. */
    private void unreadable(CommonToken last) {
        Optional<Starter> meant = misspelt(first);
        if (meant.isPresent()) {
            starter = meant.get();
            first.setType(blocks.type(starter.word()));
            reports.misspelt(first, starter.word(), open.current());
            return;
        }
        reports.unreadable(first, last, open.current(), blocks);
        CommonToken bad = new CommonToken(chars, types.badLine(), Token.DEFAULT_CHANNEL, first.getStartIndex(),
                last.getStopIndex());
        List<CommonToken> trailing = new ArrayList<>();
        for (int at = out.size() - 1; out.get(at) != last; at--) {
            trailing.addFirst(out.get(at));
        }
        out.subList(firstAt, out.size()).clear();
        out.add(bad);
        out.addAll(trailing);
    }

    // ------------------------------------------------------------ braces

    private void opening(CommonToken brace) {
        if (first == null) {
            openWithoutHeader(brace);
            return;
        }
        CommonToken last = lastVisible();
        if (starter == null) {
            unreadable(last);
        } else if (starter.opens().isEmpty()) {
            splitJoined();
        }
        CommonToken header = first;
        int column = columnOf(header);
        if (starter != null && starter.opens().isPresent()) {
            out.add(brace);
            open.open(blocks.block(starter.opens().get()), header, column);
            first = null;
            pending = null;
        } else {
            if (starter != null) {
                reports.opensNothing(brace, starter.word());
            }
            out.add(inserted(types.endOfLine(), last.getStopIndex() + 1));
            first = null;
            swallow(brace, column);
        }
        starter = null;
    }

    /** Where the line that opens the block was joined to one before it that opens none, takes the two apart. */
    private void splitJoined() {
        for (int at = out.size() - 1; at > firstAt + 1; at--) {
            Starter joined = open.current().starter(out.get(at).getType());
            if (joined != null && joined.opens().isPresent()) {
                first = out.get(at);
                starter = joined;
                reports.joined(first);
                out.add(at, inserted(types.endOfLine(), first.getStartIndex()));
                firstAt = at + 1;
                return;
            }
        }
    }

    private void openWithoutHeader(CommonToken brace) {
        boolean own = pending != null && onlyHiddenAfter(pending.endAt());
        if (own) {
            reports.braceOnItsOwn(brace, pending.last());
            out.get(pending.endAt()).setType(types.space());
            out.add(brace);
            open.open(pending.block(), pending.header(), pending.column());
            pending = null;
        } else {
            reports.strayOpen(brace);
            swallow(brace, columnOf(brace));
        }
        freshLine = false;
    }

    private boolean onlyHiddenAfter(int at) {
        return out.subList(at + 1, out.size()).stream().noneMatch(token -> types.visible(token.getType()));
    }

    /** Hides a block that may not stand here, up to its closing brace. */
    private void swallow(CommonToken brace, int column) {
        int depth = 0;
        int bodyColumn = 0;
        next--;
        while (next < raw.size()) {
            CommonToken token = raw.get(next);
            int type = token.getType();
            if (types.visible(type)) {
                int at = freshLine ? columnOf(token) : 0;
                bodyColumn = bodyColumn == 0 && token != brace ? at : bodyColumn;
                if (at > 0 && at <= column && bodyColumn > column && type != types.close() && open.excess() > 0) {
                    open.changeExcess(-1);
                    reports.closeLost(token, lines.line(brace.getStartIndex()));
                    return;
                }
                depth += type == types.open() ? 1 : type == types.close() ? -1 : 0;
                freshLine = false;
            }
            freshLine |= type == types.endOfLine();
            next++;
            if (types.visible(type) || type == types.endOfLine()) {
                token.setType(types.space());
            }
            out.add(token);
            if (depth == 0) {
                return;
            }
        }
        open.changeExcess(-1);
    }

    private void closing(CommonToken brace) {
        if (first != null) {
            reports.braceOnLine(brace);
            endOfFact(inserted(types.endOfLine(), lastVisible().getStopIndex() + 1), false);
            starter = null;
        }
        int column = column(brace);
        if (pending != null && pending.isClosedAt(column, open)) {
            openLost();
        }
        while (open.closesFurtherOut(column)) {
            reports.closeLost(brace, lineOfBlock());
            closeBlock(brace.getStartIndex());
        }
        if (open.depth() == 0) {
            reports.strayClose(brace);
            brace.setType(types.space());
            open.changeExcess(1);
        } else {
            open.close();
        }
        pending = null;
        freshLine = false;
        out.add(brace);
    }

    private int lineOfBlock() {
        return lines.line(open.header().getStartIndex());
    }

    /** Closes the current block with a brace that is put in. */
    private void closeBlock(int offset) {
        open.close();
        open.changeExcess(-1);
        out.add(inserted(types.close(), offset));
    }

    private void openLost() {
        reports.openLost(pending.last(), pending.header());
        out.get(pending.endAt()).setType(types.open());
        open.open(pending.block(), pending.header(), pending.column());
        open.changeExcess(1);
        pending = null;
    }

    /** Closes blocks until a line with a first token of a type may stand. */
    private void closeLost(CommonToken token, int type) {
        int line = lineOfBlock();
        do {
            closeBlock(token.getStartIndex());
        } while (!open.mayStandHere(type));
        reports.closeLost(token, line);
        pending = null;
    }

    private void end() {
        reports.finish();
        if (first != null) {
            endOfFact(inserted(types.endOfLine(), lastVisible().getStopIndex() + 1), false);
        }
        if (open.depth() > 0) {
            reports.neverClosed(lastVisible(), open.depth(), lineOfBlock());
        }
        while (open.depth() > 0) {
            closeBlock(chars.size());
        }
    }
}
