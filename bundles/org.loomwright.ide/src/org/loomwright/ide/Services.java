// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.act.Action;
import org.loomwright.ide.act.Actions;
import org.loomwright.ide.complete.Completion;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.ide.complete.Templates;
import org.loomwright.ide.format.Formatting;
import org.loomwright.ide.hover.Hover;
import org.loomwright.ide.hover.Hovers;
import org.loomwright.ide.inlay.Inlay;
import org.loomwright.ide.inlay.Inlays;
import org.loomwright.ide.navigate.Navigation;
import org.loomwright.ide.navigate.Occurrence;
import org.loomwright.ide.navigate.Rename;
import org.loomwright.ide.navigate.Target;
import org.loomwright.ide.outline.Colouring;
import org.loomwright.ide.outline.Folds;
import org.loomwright.ide.outline.Outline;
import org.loomwright.ide.outline.OutlineItem;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.Finding;

/**
 * Every question that can be asked about a file, in one place. Files are named as in the project; places are offsets in
 * their text. Nothing here throws for what somebody wrote; a question about a file that is not there has no answer.
 */
public final class Services {

    private Services() {
    }

    /** What can be written at a place, best first. */
    public static List<Proposal> complete(Moment moment, String file, int offset, Cancel cancel) {
        return Completion.at(moment, file, offset, cancel);
    }

    /** Whole constructs, with fields to fill in, that can begin at a place. */
    public static List<Templates.Fitting> templates(Moment moment, String file, int offset) {
        return Templates.at(moment, file, offset);
    }

    /** What is known about the word at a place. */
    public static Optional<Hover> hover(Moment moment, String file, int offset, Cancel cancel) {
        return hover(moment, file, offset, Shown.USUAL, cancel);
    }

    /** The same as somebody likes to see it. */
    public static Optional<Hover> hover(Moment moment, String file, int offset, Shown shown, Cancel cancel) {
        return Hovers.at(moment, file, offset, shown, cancel);
    }

    /** Where what the word names is declared. */
    public static List<Target> definition(Moment moment, String file, int offset) {
        return Navigation.definition(moment, file, offset);
    }

    /** All words of the project that name the same, in order of file and place. */
    public static List<Occurrence> references(Moment moment, String file, int offset, Cancel cancel) {
        return Navigation.references(moment, file, offset, cancel);
    }

    /** All words of the file that name the same. */
    public static List<Occurrence> highlights(Moment moment, String file, int offset) {
        return Navigation.highlights(moment, file, offset);
    }

    /** Things of the project by a part of their name. */
    public static List<Target> search(Moment moment, String query, Cancel cancel) {
        return Navigation.search(moment, query, cancel);
    }

    /** The word that would be renamed; empty where nothing can be. */
    public static Optional<Span> prepareRename(Moment moment, String file, int offset) {
        return Rename.prepare(moment, file, offset);
    }

    /** Renames what the word names, in all files; says why where it does not. */
    public static Rename.Renamed rename(Moment moment, String file, int offset, String name, Cancel cancel) {
        return Rename.rename(moment, file, offset, name, cancel);
    }

    /** What is in what. */
    public static List<OutlineItem> outline(Moment moment, String file) {
        return Outline.of(moment, file);
    }

    /** What can be folded. */
    public static List<Folds.Fold> folds(Moment moment, String file) {
        return Folds.of(moment, file);
    }

    /** What each word is, for colours. */
    public static List<Colouring.Tinted> colours(Moment moment, String file) {
        return Colouring.of(moment, file);
    }

    /** The same for a stretch of a file. */
    public static List<Colouring.Tinted> colours(Moment moment, String file, int from, int to) {
        return Colouring.of(moment, file, from, to);
    }

    /** The edits that bring a file into its canonical form. */
    public static List<TextEdit> format(Moment moment, String file) {
        return Formatting.whole(moment, file);
    }

    /** Those of them that lie in the lines of a stretch. */
    public static List<TextEdit> format(Moment moment, String file, int from, int to) {
        return Formatting.range(moment, file, from, to);
    }

    /** What can be done about the findings of a stretch. */
    public static List<Action> actions(Moment moment, String file, int from, int to) {
        return Actions.at(moment, file, from, to);
    }

    /** What can be done about a finding. */
    public static List<Action> actions(Moment moment, Finding finding) {
        return Actions.of(moment, finding);
    }

    /** All changes of a file that leave no doubt, as one. */
    public static Optional<Action> mendAll(Moment moment, String file) {
        return Actions.all(moment, file);
    }

    /** The figures beside the text of a stretch, lengths in millimetres or inches. */
    public static List<Inlay> inlays(Moment moment, String file, int from, int to, Unit unit, Cancel cancel) {
        return Inlays.of(moment, file, from, to, unit, cancel);
    }
}
