// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.Contents;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.Severity;

/** Reports as bytes: a checksum, then all figures and texts in a fixed order. */
final class ReportBytes {

    private static final List<Severity> SEVERITIES = List.of(Severity.values());
    private static final List<Finding.Acceptance.How> WAYS = List.of(Finding.Acceptance.How.values());

    private ReportBytes() {
    }

    /** Packs a report. Equal reports make equal bytes. */
    static byte[] pack(Kept kept) {
        Packing out = new Packing();
        Contents contents = kept.contents();
        out.number(contents.files()).number(contents.drawings()).number(contents.harnesses()).number(contents.kits());
        out.text(contents.practice());
        Report.Work work = kept.report().work();
        out.number(work.targets()).number(work.checks()).number(work.drafts());
        out.list(kept.report().findings(), ReportBytes::pack);
        return Checksum.before(out.bytes());
    }

    /** Unpacks a report; empty when the bytes are damaged. */
    static Optional<Kept> unpack(byte[] bytes) {
        if (!Checksum.holds(bytes)) {
            return Optional.empty();
        }
        try {
            Unpacking in = new Unpacking(bytes, Checksum.LENGTH);
            Contents contents = new Contents(in.small(), in.small(), in.small(), in.small(), in.text());
            Report.Work work = new Report.Work(in.number(), in.number(), in.number());
            Report report = new Report(in.list(ReportBytes::finding), work);
            return in.isEmpty() ? Optional.of(new Kept(contents, report)) : Optional.empty();
        } catch (RuntimeException e) {
            return Optional.empty();
        }
    }

    private static void pack(Packing out, Finding finding) {
        out.text(finding.rule()).number(SEVERITIES.indexOf(finding.severity())).bit(finding.inherited());
        out.text(finding.element()).text(finding.subject()).text(finding.sentence());
        out.list(finding.derivation(), Packing::text).text(finding.basis());
        out.maybe(finding.affected(), ReportBytes::pack);
        pack(out, finding.place());
        out.list(finding.related(), ReportBytes::pack).text(finding.advice());
        out.list(finding.fixes(), (to, fix) -> to.text(fix.title())
                .list(fix.edits(), ReportBytes::pack).bit(fix.certain()));
        out.maybe(finding.acceptance(), ReportBytes::pack).text(finding.fingerprint());
    }

    private static Finding finding(Unpacking in) {
        return new Finding(in.text(), SEVERITIES.get(in.small()), in.bit(), in.text(), in.text(), in.text(),
                in.list(Unpacking::text), in.text(), in.maybe(ReportBytes::affected), label(in),
                in.list(ReportBytes::label), in.text(),
                in.list(from -> new Finding.Fix(from.text(), from.list(ReportBytes::edit), from.bit())),
                in.maybe(ReportBytes::acceptance), in.text());
    }

    private static void pack(Packing out, Finding.Affected affected) {
        out.text(affected.words()).text(affected.tally());
        out.maybe(affected.count().map(BigInteger::toString), Packing::text);
        out.maybe(affected.of().map(BigInteger::toString), Packing::text).bit(affected.bounded());
    }

    private static Finding.Affected affected(Unpacking in) {
        return new Finding.Affected(Optional.empty(), in.text(), in.text(), in.maybe(Unpacking::text)
                .map(BigInteger::new), in.maybe(Unpacking::text).map(BigInteger::new), in.bit());
    }

    private static void pack(Packing out, Finding.Label label) {
        pack(out, label.span());
        out.text(label.text());
    }

    private static Finding.Label label(Unpacking in) {
        return new Finding.Label(span(in), in.text());
    }

    private static void pack(Packing out, TextEdit edit) {
        pack(out, edit.span());
        out.text(edit.text());
    }

    private static TextEdit edit(Unpacking in) {
        return new TextEdit(span(in), in.text());
    }

    private static void pack(Packing out, Finding.Acceptance acceptance) {
        out.number(WAYS.indexOf(acceptance.how())).text(acceptance.reason());
        pack(out, acceptance.place());
    }

    private static Finding.Acceptance acceptance(Unpacking in) {
        return new Finding.Acceptance(WAYS.get(in.small()), in.text(), span(in));
    }

    private static void pack(Packing out, Span span) {
        out.text(span.file()).number(span.offset()).number(span.length()).number(span.line()).number(span.column());
    }

    private static Span span(Unpacking in) {
        return new Span(in.text(), in.small(), in.small(), in.small(), in.small());
    }
}
