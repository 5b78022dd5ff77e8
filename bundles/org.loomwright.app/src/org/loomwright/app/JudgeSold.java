// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.compare.ProjectComparer;
import org.loomwright.compare.consequence.Consequence;
import org.loomwright.harness.Kit;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Holds a project against every revision of its kits that has been sold. Where the sources of a sold revision come from
 * is up to the archive. Safe for use by several threads if the archive is.
 */
public final class JudgeSold {

    private final CompareRevisions compare;

    /**
     * @param comparer finds the changes
     * @param frozen   says what a kit can do no more, and objects where the new side lists the old one as sold
     */
    public JudgeSold(ProjectComparer comparer, Consequence frozen) {
        this.compare = new CompareRevisions(comparer, List.of(frozen));
    }

    /** Where the sources of sold revisions are. */
    @FunctionalInterface
    public interface Archive {

        /**
         * Opens the sources as they were.
         *
         * @param at the name under which version control keeps them, as the kit states it
         * @throws BadCall if there is nothing of that name
         */
        Opened at(String at) throws BadCall;
    }

    /**
     * A sold revision and the project now.
     *
     * @param kit      the kit
     * @param sold     the revision
     * @param compared what is different; its effects are what the kit can do no more
     */
    public record Judged(Kit kit, Kit.Sold sold, Compared compared) {
    }

    /**
     * Judges every sold revision that the kits list, in the order of the sources.
     *
     * @throws BadCall if the archive does not have one of them
     */
    public List<Judged> judge(Opened now, Archive archive, Cancel cancel, Progress progress) throws BadCall {
        List<Judged> judged = new ArrayList<>();
        for (Kit kit : now.project().kits().values()) {
            for (Kit.Sold sold : kit.sold()) {
                cancel.check();
                judged.add(new Judged(kit, sold, compare.compare(archive.at(sold.at()), now, cancel, progress)));
            }
        }
        return List.copyOf(judged);
    }
}
