// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.app.ProveProject.Proof;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitStatus;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** The examples that users start from prove. */
class ExamplesTest {

    private final SourceReader reader = Repository.reader();

    private Proof prove(String example) throws BadCall {
        ProveProject prove = new ProveProject(StandardRules.engine(),
                new JudgeFit(new ChainJudge(), FitDefaults.usual()));
        return prove.prove(Repository.example(example, reader), Settings.TIMELESS, Severity.WARNING, Cancel.NEVER,
                Progress.NONE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"orrin", "trailer"})
    void nothingIsObjectedTo(String example) throws BadCall {
        Proof proof = prove(example);
        List<String> objections = proof.report().counting().stream()
                .filter(finding -> finding.severity().atLeast(Severity.WARNING))
                .map(finding -> finding.place().span().at() + " " + finding.rule() + ": " + finding.sentence())
                .toList();
        assertEquals(List.of(), objections);
        assertFalse(proof.tables().isEmpty());
        assertTrue(proof.tables().stream().noneMatch(table -> table.rows().isEmpty()), proof.tables()::toString);
    }

    /** The rear harness leaves 155.2 mm at the left tail lamp of a saloon; its waiver says why that may be. */
    @Test
    void theHarnessesFitEveryDrawingButForOnePlaceThatIsWaived() throws BadCall {
        Proof proof = prove("orrin");
        Map<String, List<String>> misfits = new TreeMap<>();
        for (JudgeFit.Judged judged : proof.fits()) {
            FitReport report = judged.report();
            assertEquals(0, report.problem().evidence().missing());
            if (!judged.coversNothing()) {
                assertTrue(report.problem().columns().size() >= 4);
                assertEquals(List.of(), report.problem().unjudged());
                misfits.put(judged.harness().name(), report.cells().stream()
                        .filter(cell -> cell.status().isFailure() || cell.status() == FitStatus.NOT_PROVED)
                        .map(cell -> cell.status() + " " + report.problem().rows().get(cell.row()).place() + " "
                                + report.problem().columns().get(cell.column()).drawing()).distinct().toList());
            }
        }
        assertEquals(Map.of("front", List.of(), "rear", List.of("TOO_LONG tailLeft rear64")), misfits);
        assertEquals(List.of("rear:bTailL"), proof.report().of("excess-too-great").stream()
                .filter(finding -> finding.acceptance().isPresent()).map(Finding::element).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = "orrin")
    void whatTheFactoryDidIsShownOnRequestAndDoesNotCount(String example) throws BadCall {
        Proof proof = prove(example);
        assertTrue(proof.report().findings().stream().anyMatch(Finding::inherited));
        assertTrue(Tally.of(proof.report()).inherited() > 0);
        assertEquals(0, Tally.of(proof.report()).errors());
    }
}
