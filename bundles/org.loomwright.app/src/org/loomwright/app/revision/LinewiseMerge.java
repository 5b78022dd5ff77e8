// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.revision;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jgit.diff.HistogramDiff;
import org.eclipse.jgit.diff.RawText;
import org.eclipse.jgit.diff.RawTextComparator;
import org.eclipse.jgit.merge.MergeAlgorithm;
import org.eclipse.jgit.merge.MergeChunk;
import org.eclipse.jgit.merge.MergeChunk.ConflictState;
import org.eclipse.jgit.merge.MergeResult;
import org.loomwright.compare.merge.Marks;

/** Merges texts line by line, as version control does: for a file that cannot be taken apart. */
public final class LinewiseMerge {

    private LinewiseMerge() {
    }

    /** The text, and how many conflicts are marked in it. */
    public record Result(String text, int conflicts) {
    }

    /** Merges three texts. */
    public static Result of(String base, String ours, String theirs, Marks marks) {
        MergeResult<RawText> merged = new MergeAlgorithm(new HistogramDiff()).merge(RawTextComparator.DEFAULT,
                raw(base), raw(ours), raw(theirs));
        StringBuilder out = new StringBuilder();
        int conflicts = 0;
        boolean open = false;
        for (MergeChunk chunk : merged) {
            ConflictState state = chunk.getConflictState();
            if (state == ConflictState.BASE_CONFLICTING_RANGE) {
                continue;
            }
            if (open && state != ConflictState.NEXT_CONFLICTING_RANGE) {
                line(out, marks.end());
                open = false;
            }
            if (state == ConflictState.FIRST_CONFLICTING_RANGE) {
                conflicts++;
                open = true;
                line(out, marks.begin());
            } else if (state == ConflictState.NEXT_CONFLICTING_RANGE) {
                line(out, marks.middle());
            }
            RawText text = merged.getSequences().get(chunk.getSequenceIndex());
            lines(text, chunk).forEach(each -> add(out, each));
        }
        if (open) {
            line(out, marks.end());
        }
        return new Result(out.toString(), conflicts);
    }

    private static List<String> lines(RawText text, MergeChunk chunk) {
        List<String> lines = new ArrayList<>();
        for (int i = chunk.getBegin(); i < chunk.getEnd(); i++) {
            boolean last = i == text.size() - 1 && text.isMissingNewlineAtEnd();
            lines.add(text.getString(i) + (last ? "" : "\n"));
        }
        return lines;
    }

    private static void line(StringBuilder out, String words) {
        add(out, words + "\n");
    }

    private static void add(StringBuilder out, String line) {
        if (!out.isEmpty() && out.charAt(out.length() - 1) != '\n') {
            out.append('\n');
        }
        out.append(line);
    }

    private static RawText raw(String text) {
        return new RawText(text.getBytes(StandardCharsets.UTF_8));
    }
}
