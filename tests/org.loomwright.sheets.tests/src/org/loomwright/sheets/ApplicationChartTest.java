// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Finding.Acceptance;
import org.loomwright.rules.Severity;
import org.loomwright.sheets.compose.Composer;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.page.Typeface;

/** Which vehicles the chart calls covered where a person accepted what does not quite fit. */
class ApplicationChartTest {

    private static final String LONG = "excess-too-great";

    private static List<String> verdicts(Order order) {
        Block.Grid grid = new Composer(order, new Typeface()).application().blocks().stream()
                .filter(each -> each instanceof Block.Grid table && table.name().equals("vehicles"))
                .map(Block.Grid.class::cast).findFirst().orElseThrow();
        return grid.rows().stream().map(each -> each.cells().getFirst().text() + ": " + each.cells().getLast().text())
                .toList();
    }

    private static Finding finding(Order order, String rule, Optional<Acceptance> acceptance) {
        return new Finding(rule, Severity.ERROR, false, "rear:bTailL", "branch bTailL of rear", "it is too long",
                List.of(), "", Optional.of(Finding.Affected.of(order.project().wiring("rear64").orElseThrow().when(),
                false)), new Finding.Label(Span.NONE, ""), List.of(), "", List.of(), acceptance, "0");
    }

    private static Order with(Order order, Finding... findings) {
        return new Order(order.project(), order.platform(), order.kit(), order.name(), order.title(), order.revision(),
                order.vehicles(), order.harnesses(), List.of(findings), order.rules(), order.fits(), order.sources());
    }

    @Test
    void whatAPersonAcceptedIsCoveredAndTheReasonStandsThere() throws Exception {
        Examples examples = new Examples();
        Order order = examples.order(examples.example("orrin"), "rearKit", "");
        Optional<Acceptance> tried = Optional.of(new Acceptance(Acceptance.How.WAIVED, "tried in a saloon",
                Span.NONE));
        String saloon = "year <= 1969 and saloon (12,240 vehicles): ";
        assertTrue(verdicts(with(order)).contains(saloon + "not covered, because bTailL too long"),
                verdicts(order).toString());
        assertTrue(verdicts(with(order, finding(order, LONG, tried))).contains(saloon
                + "covered; accepted: bTailL too long (tried in a saloon)"));
        assertTrue(verdicts(with(order, finding(order, LONG, tried), finding(order, LONG, Optional.empty())))
                .contains(saloon + "not covered, because bTailL too long"), "one of two is open");
        assertTrue(verdicts(with(order, finding(order, "too-long-to-park", tried))).contains(saloon
                + "not covered, because bTailL too long"), "another rule was accepted");
        assertEquals(4, verdicts(order).stream().filter(each -> each.endsWith(": covered")).count());
    }
}
