// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.condition.Condition;
import org.loomwright.fit.Demand;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitCell.Figures;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitRow;
import org.loomwright.fit.FitStatus;
import org.loomwright.fit.Requirement;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

/**
 * What stands in the way of a harness's fit, as findings: each place and geometry that fails or cannot be judged, with
 * the sum that shows it.
 */
public final class FitFindings {

    private static final String BASIS = "the definition of fit in docs/fit.md, worst case of all tolerances";
    private static final int FINGERPRINT = 16;

    private final Judged judged;

    private FitFindings(Judged judged) {
        this.judged = judged;
    }

    /** The findings of a harness, in the order of its places; none for a harness that covers nothing. */
    public static List<Finding> of(Judged judged) {
        FitFindings all = new FitFindings(judged);
        FitReport report = judged.report();
        Map<Said, Condition> said = new LinkedHashMap<>();
        for (FitCell cell : report.cells()) {
            if (cell.status().isFailure() || cell.status() == FitStatus.NOT_PROVED) {
                said.merge(all.about(cell), report.problem().columns().get(cell.column()).vehicles(), Condition::or);
            }
        }
        List<Finding> findings = new ArrayList<>();
        said.forEach((what, vehicles) -> findings.add(what.about(vehicles)));
        if (!judged.coversNothing()) {
            report.problem().problems().stream().filter(problem -> problem.code().startsWith("fit-"))
                    .forEach(problem -> findings.add(about(problem)));
        }
        return findings;
    }

    /** What is said of a place in a drawing; geometries of which the same is said share a finding. */
    private record Said(String rule, Severity severity, String element, String subject, String sentence,
            List<String> derivation, Finding.Label place, List<Finding.Label> related, String advice, String drawing) {

        Finding about(Condition vehicles) {
            Finding.Affected affected = new Finding.Affected(vehicles, VehicleWords.of(vehicles),
                    VehicleWords.tally(vehicles), false);
            return new Finding(rule, severity, false, element, subject, sentence, derivation, BASIS,
                    Optional.of(affected), place, related, advice, List.of(), Optional.empty(),
                    fingerprint(rule, element, drawing, affected.words()));
        }
    }

    private Said about(FitCell cell) {
        FitRow row = judged.report().problem().rows().get(cell.row());
        String drawing = judged.report().problem().columns().get(cell.column()).drawing();
        String harness = judged.harness().name();
        String element = row.branch().isEmpty() ? harness : harness + ":" + row.branch();
        Span factory = cell.factorySpan().orElse(Span.NONE);
        Optional<Span> ours = cell.harnessSpan();
        List<Finding.Label> related = new ArrayList<>();
        if (ours.isPresent() && !factory.equals(Span.NONE)) {
            related.add(new Finding.Label(factory, "the factory's branch"));
        }
        if (cell.requirement() instanceof Requirement.Parked parked && parked.stated()) {
            related.add(new Finding.Label(parked.capSpan(), "parked here"));
        }
        return new Said("fit-" + cell.status().words().replace(' ', '-'),
                cell.status().isFailure() ? Severity.ERROR : Severity.WARNING, element,
                (row.branch().isEmpty() ? "place " + row.place() : "branch " + row.branch()) + " of " + harness,
                sentence(cell, row, drawing), cell.figures().map(each -> derivation(cell, each)).orElse(List.of()),
                new Finding.Label(ours.orElse(factory), ""), List.copyOf(related), advice(cell, row), drawing);
    }

    private static String sentence(FitCell cell, FitRow row, String drawing) {
        String where = row.place() + " as " + drawing + " has it";
        return switch (cell.status()) {
            case TOO_SHORT -> "branch " + row.branch() + " is " + mm(cell.figures().orElseThrow().margin().negated())
                    + " too short for " + where;
            case TOO_LONG -> "branch " + row.branch() + " is " + mm(over(cell.figures().orElseThrow()))
                    + " too long for " + where;
            case DOUBLES_BACK -> "branch " + row.branch() + " runs " + mm(cell.figures().orElseThrow().along())
                    + " along the trunk to " + where;
            case TOO_LONG_TO_PARK -> "branch " + row.branch()
                    + " is too long to be parked where these vehicles do not use it";
            case NOT_SERVED -> drawing + " has a branch to " + row.place() + " and the harness has none";
            case NOT_PROVED -> "nobody can say whether branch " + row.branch() + " fits " + where + ": "
                    + cell.reason().map(Requirement.Reason::words).orElse("its length is not known");
            case FITS, CAPPED, ELSEWHERE -> throw new IllegalArgumentException("nothing to report");
        };
    }

    private static List<String> derivation(FitCell cell, Figures figures) {
        Demand demand = figures.demand();
        if (cell.status() == FitStatus.DOUBLES_BACK) {
            return List.of(figures.along() + " along the trunk, more than " + demand.backLimit());
        }
        String common = " - " + figures.along() + " along the trunk - " + demand.factory() + " factory length - "
                + demand.extra() + " needed besides";
        return cell.status() == FitStatus.TOO_LONG
                ? List.of(demand.made() + " + " + demand.madeTolerance().plus() + " made longer" + common + " + "
                        + demand.excessAllowance() + " tolerances = " + figures.excess() + " to dress back, more than "
                        + demand.excessLimit())
                : List.of(demand.made() + " - " + demand.madeTolerance().minus() + " made shorter" + common + " - "
                        + demand.reachAllowance() + " tolerances = " + figures.margin() + " left");
    }

    private static String advice(FitCell cell, FitRow row) {
        return switch (cell.status()) {
            case TOO_SHORT -> "make it at least " + mm(cell.figures().orElseThrow().margin().negated())
                    + " longer, or move its breakout";
            case TOO_LONG -> "make it shorter, move its breakout, or allow more with: excessAtMost ... at "
                    + row.place();
            case DOUBLES_BACK -> "move its breakout, or allow more than "
                    + cell.figures().orElseThrow().demand().backLimit() + " with: doublingBackAtMost ... at "
                    + row.place();
            case TOO_LONG_TO_PARK -> "make it shorter, or park it where there is more room";
            case NOT_SERVED -> "add a branch to " + row.place() + ", or do not cover this drawing";
            default -> "measure it and state it, on a sample where no sheet gives it";
        };
    }

    private static Length over(Figures figures) {
        return figures.excess().minus(figures.demand().excessLimit());
    }

    /** Rounded up to a tenth of a millimetre. */
    private static String mm(Length length) {
        return length.roundedUpTo(new Length(100_000)).toString();
    }

    private static Finding about(Problem problem) {
        return new Finding(problem.code(), Severity.WARNING, false, "", "", problem.message(), List.of(), BASIS,
                Optional.empty(), new Finding.Label(problem.span(), ""), List.of(), problem.advice(), List.of(),
                Optional.empty(), fingerprint(problem.code(), problem.span().file(), problem.message()));
    }

    private static String fingerprint(String... words) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String word : words) {
                digest.update(word.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return HexFormat.of().formatHex(digest.digest(), 0, FINGERPRINT);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
