// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The lines of one text with their words. Immutable.
 *
 * @param text     the text
 * @param lines    the lines that hold something, in order
 * @param comments where comments stand, in order
 * @param looked   how many lines were matched anew, for tests that guard growth
 */
public record WordLines(String text, List<Line> lines, List<Stretch> comments, int looked) {

    /** A stretch of the text. */
    public record Stretch(int offset, int end) {
    }

    public WordLines {
        lines = List.copyOf(lines);
        comments = List.copyOf(comments);
    }

    /** The last line that starts at or before a place; empty if none does. O(log lines). */
    public Optional<Line> lineAt(int offset) {
        int low = 0;
        int high = lines.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            if (lines.get(middle).offset() <= offset) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return high < 0 ? Optional.empty() : Optional.of(lines.get(high));
    }

    /** The word that touches a place; where two do, the one that starts there unless it is a mere sign. */
    public Optional<Word> wordAt(int offset) {
        Word found = null;
        Optional<Line> line = lineAt(offset);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        for (Word word : line.get().words()) {
            if (word.touches(offset) && (found == null || word.slot().sort() != Slot.Sort.MARK)) {
                found = word;
            }
        }
        return Optional.ofNullable(found);
    }

    /** The line that opens the block in which a line stands. */
    public Optional<Line> parent(Line line) {
        return line.parent() < 0 ? Optional.empty() : Optional.of(lines.get(line.parent()));
    }

    /** A line and the heads around it, from the inside out. */
    public List<Line> outwards(Line line) {
        List<Line> path = new ArrayList<>();
        for (Line each = line; each != null; each = each.parent() < 0 ? null : lines.get(each.parent())) {
            path.add(each);
        }
        return path;
    }

    /** The innermost block that holds a place: its head; empty at the top. */
    public Optional<Line> blockAt(int offset) {
        Optional<Line> line = lineAt(offset);
        while (line.isPresent() && !(line.get().isHead() && line.get().end() <= offset
                && offset < line.get().close())) {
            line = parent(line.get());
        }
        return line;
    }

    /** Whether a place lies within a comment. */
    public boolean inComment(int offset) {
        for (Stretch each : comments) {
            if (each.offset() >= offset) {
                return false;
            }
            if (offset <= each.end() && !text.startsWith("*/", each.end() - 2)
                    || offset < each.end()) {
                return true;
            }
        }
        return false;
    }
}
