// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Run;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Column;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;

/** The cover sheet: what the set is for, which checks were made on what bases, and what stays open. */
final class CoverSheet {

    private static final String UNFUSED = "no-protection";

    private final Order order;
    private final List<Block> blocks = new ArrayList<>();

    private CoverSheet(Order order) {
        this.order = order;
    }

    static Document of(Order order, List<String> documents) {
        CoverSheet sheet = new CoverSheet(order);
        sheet.about(documents);
        sheet.blocks.add(new Block.Cautions(Cautions.ALWAYS));
        sheet.fit();
        sheet.findings();
        sheet.unfused();
        sheet.lengths();
        sheet.checks();
        sheet.unchecked();
        return new Document(order.name() + "-cover", "Cover sheet", order.title() + " (" + order.name() + ")", false,
                sheet.blocks, List.of());
    }

    private void about(List<String> documents) {
        List<Row> rows = new ArrayList<>();
        rows.add(Row.of(order.kit().isPresent() ? "Kit" : "Harness", order.title() + " (" + order.name() + ")"));
        if (order.kit().isPresent()) {
            rows.add(Row.of("Revision", order.revision().isEmpty() ? "not stated" : order.revision()));
        }
        rows.add(Row.of("Platform", order.platformTitle() + " (" + order.platform().name() + "), "
                + order.platform().platform().supply().map(supply -> supply.voltage().written()
                        + (supply.negativeGround() ? " negative ground" : " positive ground"))
                        .orElse("supply not stated")));
        rows.add(Row.of("Vehicles", order.words()));
        order.kit().flatMap(each -> each.needs()).ifPresent(need -> rows.add(Row.of("Needs", need.kit().text()
                + " revision " + need.revision() + (need.orLater() ? " or later" : ""))));
        rows.add(Row.of("Harnesses", String.join("; ", order.harnesses().stream()
                .map(each -> each.title() + " (" + each.name() + ")").toList())));
        rows.add(Row.of("Sources", order.sources()));
        rows.add(Row.of("Documents of this set", String.join(", ", documents)));
        blocks.add(new Grid("set", List.of(Column.of("This set"), Column.of("")), rows));
    }

    private void fit() {
        if (order.fits().isEmpty()) {
            return;
        }
        blocks.add(new Block.Heading("Fit of the harnesses"));
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            FitReport report = order.fits().get(harness.name());
            if (report != null) {
                rows.add(Row.of(harness.name(), harness.view().covers().isEmpty()
                        ? "covers no drawing: there is nothing that it was held against" : report.words()));
            }
        }
        blocks.add(new Grid("fit", List.of(Column.of("Harness"), Column.of("Judgement")), rows));
    }

    private void findings() {
        List<Finding> open = order.findings().stream().filter(Finding::counts).toList();
        List<Finding> accepted = order.findings().stream()
                .filter(each -> each.acceptance().isPresent() && !each.inherited()).toList();
        blocks.add(new Block.Heading("Findings that are open: " + open.size()));
        if (open.isEmpty()) {
            blocks.add(new Block.Words("The rules below object to nothing."));
        } else {
            blocks.add(new Grid("open", List.of(Column.of("Weight"), Column.of("What"), Column.of("Vehicles"),
                    Column.of("Where")), open.stream().map(each -> Row.of(each.severity().words(), what(each),
                            vehicles(each), each.place().span().at())).toList()));
        }
        blocks.add(new Block.Heading("Findings that somebody accepted: " + accepted.size()));
        if (accepted.isEmpty()) {
            blocks.add(new Block.Words("Nothing that the rules object to was accepted as it is."));
        } else {
            blocks.add(new Grid("accepted", List.of(Column.of("How"), Column.of("What"), Column.of("Reason"),
                    Column.of("Vehicles")), accepted.stream().map(each -> Row.of(
                            each.acceptance().orElseThrow().how().words(), what(each),
                            each.acceptance().orElseThrow().reason(), vehicles(each))).toList()));
        }
    }

    private static String what(Finding finding) {
        return (finding.subject().isEmpty() ? "" : finding.subject() + ": ") + finding.sentence() + " ("
                + finding.rule() + ")";
    }

    private static String vehicles(Finding finding) {
        return finding.affected().map(each -> each.every() ? "all" : each.words()).orElse("");
    }

    private void unfused() {
        List<Finding> runs = order.findings().stream().filter(each -> each.rule().equals(UNFUSED) && !each.inherited())
                .toList();
        blocks.add(new Block.Heading("Runs without a fuse: " + runs.size()));
        if (runs.isEmpty()) {
            blocks.add(new Block.Words("No wire of these harnesses is fed without protection, as far as the sources"
                    + " describe what feeds it."));
        } else {
            blocks.add(new Grid("unfused", List.of(Column.of("Run"), Column.of("Why"), Column.of("Vehicles")),
                    runs.stream().map(each -> Row.of(each.subject(), each.sentence() + (each.advice().isEmpty() ? ""
                            : "; " + each.advice()), vehicles(each))).toList()));
        }
    }

    private void lengths() {
        List<Row> rows = new ArrayList<>();
        for (LaidHarness harness : order.harnesses()) {
            TreeSet<String> unknown = new TreeSet<>(new org.loomwright.harness.link.NaturalOrder());
            harness.pieces().stream().filter(each -> each.cut().isEmpty()).map(Piece::wire).forEach(unknown::add);
            if (!unknown.isEmpty()) {
                rows.add(Row.of(harness.name(), "no cut length", "wires " + String.join(", ", unknown)));
            }
            Map<Measure.Provenance, List<String>> weak = new LinkedHashMap<>();
            for (Run run : harness.view().wiring().runs()) {
                run.length().filter(CoverSheet::weak).ifPresent(each -> weak.computeIfAbsent(each.provenance(),
                        any -> new ArrayList<>()).add(run.name().text()));
                run.breakouts().stream().filter(each -> weak(each.at())).forEach(each -> weak.computeIfAbsent(
                        each.at().provenance(), any -> new ArrayList<>()).add(each.name().text()));
            }
            weak.forEach((provenance, names) -> rows.add(Row.of(harness.name(), provenance.words(),
                    String.join(", ", names))));
            FitReport fit = order.fits().get(harness.name());
            if (fit != null && !harness.view().covers().isEmpty() && fit.verdict() != FitReport.Verdict.FITS) {
                rows.add(Row.of(harness.name(), fit.verdict().words(), "see the fit above"));
            }
        }
        blocks.add(new Block.Heading("Lengths that are not proved"));
        if (rows.isEmpty()) {
            blocks.add(new Block.Words("None: every length is stated, and none of our own is scaled off a drawing."));
        } else {
            blocks.add(new Grid("lengths", List.of(Column.of("Harness"), Column.of("What"), Column.of("Which")),
                    rows));
        }
    }

    private static boolean weak(Measure measure) {
        return measure.provenance() == Measure.Provenance.SCALED || measure.provenance() == Measure.Provenance.UNKNOWN;
    }

    private void checks() {
        boolean bounded = order.findings().stream().anyMatch(each -> each.rule().equals("circuits-bounded"));
        checks("Checks of every vehicle", order.rules().stream().filter(each -> !bounded || each.reachesEveryVehicle())
                .toList());
        if (bounded) {
            checks("Checks of some vehicles only, as circuits-bounded says", order.rules().stream()
                    .filter(each -> !each.reachesEveryVehicle()).toList());
        }
    }

    private void checks(String heading, List<RuleInfo> rules) {
        blocks.add(new Block.Heading(heading + ": " + rules.size() + (rules.size() == 1 ? " rule" : " rules")));
        List<Row> rows = new ArrayList<>();
        for (RuleInfo rule : rules) {
            long found = order.findings().stream()
                    .filter(each -> each.rule().equals(rule.id()) && each.counts()).count();
            rows.add(Row.of(Words.capital(rule.title()) + " (" + rule.id() + ")", found == 0 ? "none"
                    : Long.toString(found), rule.basis()));
        }
        blocks.add(new Grid("checks", List.of(Column.of("Rule"), Column.of("Open"), Column.of("Basis")), rows));
    }

    private void unchecked() {
        blocks.add(new Block.Heading("What was not checked"));
        blocks.add(new Block.Words("Anything that the sources do not say. Currents and voltages of the vehicles "
                + "that circuits-bounded names above. The vehicle itself: its own wiring, repairs "
                + "by earlier owners, and what was fitted later. Mechanical damage, chafing and heat "
                + "on the way. Vibration, water and ageing. Electromagnetic disturbance. Whether the "
                + "work was done as described. Compliance with any regulation: where a law's table is"
                + " named as a basis, it lends its figures only."));
    }
}
