// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Report;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** The work of reading, of joining and of each rule alone, at ten times the drawings: at most twelve times as much. */
class RuleGrowthTest {

    /** Operations on conditions that a platform takes whatever its size is. */
    private static final long START = 50;

    private final SourceReader reader = LoomReader.create();

    private List<Source> sources(int drawings) {
        return new Loader(reader, 1).load(new LargeProject(drawings, 36).inputs(), Cancel.NEVER, Progress.NONE)
                .sources();
    }

    private Project project(List<Source> sources) {
        return Project.link(sources, new StockShelf(reader));
    }

    private static long operations(Project project) {
        return project.platforms().get("orrin").vehicles().work().operations();
    }

    private final List<String> tooFast = new ArrayList<>();

    private void grows(String what, long small, long large) {
        if (large > 10 * 1.2 * Math.max(small, START)) {
            tooFast.add(what + ": " + small + " and " + large);
        }
    }

    @Test
    void elementsAndOperationsOfJoining() {
        List<Source> few = sources(5);
        List<Source> many = sources(50);
        grows("elements", few.stream().mapToLong(each -> each.elements().size()).sum(),
                many.stream().mapToLong(each -> each.elements().size()).sum());
        grows("joining", operations(project(few)), operations(project(many)));
        assertEquals(List.of(), tooFast);
    }

    @Test
    void everyRuleAlone() {
        List<Source> few = sources(5);
        List<Source> many = sources(50);
        RuleBook book = StandardRules.book();
        List<String> told = new ArrayList<>();
        for (Rule<?> each : book.rules()) {
            RuleInfo rule = each.info();
            BookRuleEngine engine = new BookRuleEngine(book.part(Set.of(rule.id())));
            Project small = project(few);
            Project large = project(many);
            long before = operations(small);
            long beforeLarge = operations(large);
            Report.Work little = engine.check(small, Settings.TIMELESS, Cancel.NEVER, Progress.NONE).work();
            Report.Work much = engine.check(large, Settings.TIMELESS, Cancel.NEVER, Progress.NONE).work();
            grows(rule.id() + ", targets", little.targets(), much.targets());
            grows(rule.id() + ", questions", little.checks(), much.checks());
            grows(rule.id() + ", operations on conditions", operations(small) - before,
                    operations(large) - beforeLarge);
            if (little.checks() > 0) {
                told.add(rule.id());
            }
        }
        assertEquals(List.of(), tooFast);
        assertEquals(book.rules().size(), told.size(), "rules that were asked something: " + told);
    }
}
