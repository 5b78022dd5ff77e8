// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.ProjectComparer;
import org.loomwright.compare.consequence.Consequence;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.consequence.FindingsConsequence;
import org.loomwright.compare.consequence.FitConsequence;
import org.loomwright.compare.consequence.InterfaceConsequence;
import org.loomwright.compare.consequence.LampsConsequence;
import org.loomwright.compare.consequence.LengthsConsequence;
import org.loomwright.compare.consequence.Revision;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.geometry.Copper;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;

/**
 * What a revision changes and what follows. Either side is an opened project, wherever its bytes came from. Safe for
 * use by several threads.
 */
public final class CompareRevisions {

    private final ProjectComparer comparer;
    private final List<Consequence> consequences;

    /**
     * @param comparer     finds the changes
     * @param consequences what to follow, in the order in which it is told
     */
    public CompareRevisions(ProjectComparer comparer, List<Consequence> consequences) {
        this.comparer = comparer;
        this.consequences = List.copyOf(consequences);
    }

    /**
     * Compares fact by fact, and follows everything: what a sold kit can do no more, findings, fit, lengths and parts.
     *
     * @param rules    checks each side
     * @param settings the day on which waivers are judged
     * @param sold     true when the old side is known to be sold
     */
    public static CompareRevisions whole(RuleEngine rules, Settings settings, boolean sold) {
        FitJudge judge = new ChainJudge();
        FitDefaults defaults = FitDefaults.usual();
        return new CompareRevisions(new FactComparer(), List.of(new InterfaceConsequence(judge, defaults, sold),
                new FindingsConsequence(rules, settings), new FitConsequence(judge, defaults),
                new LampsConsequence(), new LengthsConsequence(Copper.HANDBOOK),
                new PartsConsequence()));
    }

    /**
     * What came of it.
     *
     * @param old        the old side
     * @param now        the new side
     * @param comparison what is different
     * @param effects    what follows, without what has no effect
     */
    public record Compared(Opened old, Opened now, Comparison comparison, List<Effect> effects) {

        public Compared {
            effects = List.copyOf(effects);
        }

        /** Whether an objection of that weight or more was gained. */
        public boolean objects(Severity threshold) {
            return effects.stream().anyMatch(effect -> effect.objects(threshold));
        }
    }

    /** Compares two sides. */
    public Compared compare(Opened old, Opened now, Cancel cancel, Progress progress) {
        progress.report("comparing facts", 0, consequences.size() + 1);
        Comparison comparison = comparer.compare(old.project(), now.project());
        Revision revision = new Revision(old.project(), now.project(), comparison);
        List<Effect> effects = new ArrayList<>();
        for (Consequence each : consequences) {
            cancel.check();
            Effect effect = each.of(revision, cancel, progress);
            if (!effect.lines().isEmpty()) {
                effects.add(effect);
            }
        }
        return new Compared(old, now, comparison, effects);
    }
}
