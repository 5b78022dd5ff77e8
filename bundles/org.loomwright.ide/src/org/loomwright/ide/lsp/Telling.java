// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.services.LanguageClient;
import org.loomwright.harness.LineIndex;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Listener;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;

/** Tells the client what is found. */
final class Telling implements Listener {

    static final String SOURCE = "loomwright";
    /** The most findings of a file that a client is told of: the worst of them, for no window shows more. */
    static final int MOST = 1_000;

    private final LanguageClient client;
    private final Uris uris;
    private final Optional<Progresses> progresses;

    private final boolean asksAgain;

    /** @param asksAgain whether the client asks for its inlays again when it is told to */
    Telling(LanguageClient client, Uris uris, Optional<Progresses> progresses, boolean asksAgain) {
        this.client = client;
        this.asksAgain = asksAgain;
        this.uris = uris;
        this.progresses = progresses;
    }

    @Override
    public void findings(Path file, OptionalInt version, Moment moment, List<Finding> findings) {
        List<Diagnostic> diagnostics = new ArrayList<>();
        for (Finding finding : worst(findings)) {
            diagnostics.add(diagnostic(finding, file, moment));
        }
        if (findings.size() > MOST) {
            diagnostics.add(new Diagnostic(new Range(new Position(0, 0), new Position(0, 0)), findings.size() - MOST
                    + " more findings of this file are not shown; check --all lists them",
                    DiagnosticSeverity.Information, SOURCE));
        }
        PublishDiagnosticsParams params = new PublishDiagnosticsParams(uris.of(file), diagnostics);
        version.ifPresent(params::setVersion);
        client.publishDiagnostics(params);
    }

    private static List<Finding> worst(List<Finding> findings) {
        return findings.size() <= MOST ? findings : findings.stream()
                .sorted(Comparator.comparingInt(each -> severity(each.severity()).getValue())).limit(MOST).toList();
    }

    private Diagnostic diagnostic(Finding finding, Path file, Moment moment) {
        String name = finding.place().span().file();
        LineIndex lines = moment.lines(name);
        Diagnostic diagnostic = new Diagnostic(Places.range(lines, finding.place().span()), message(finding),
                severity(finding.severity()), SOURCE);
        diagnostic.setCode(finding.rule());
        List<DiagnosticRelatedInformation> related = new ArrayList<>();
        Path root = root(file, name);
        for (Finding.Label label : finding.related()) {
            uris.of(root, label.span().file()).filter(uri -> moment.has(label.span().file()))
                    .ifPresent(uri -> related.add(new DiagnosticRelatedInformation(new Location(uri,
                            Places.range(moment.lines(label.span().file()), label.span())),
                            label.text().isEmpty() ? "see also" : label.text())));
        }
        diagnostic.setRelatedInformation(related);
        return diagnostic;
    }

    /** The project's folder: the file's path without its name in the project. */
    private static Path root(Path file, String name) {
        Path root = file;
        for (int i = Path.of(name).getNameCount(); i > 0; i--) {
            root = root.getParent();
        }
        return root;
    }

    /** What is wrong, for which vehicles, and what to try. */
    private static String message(Finding finding) {
        StringBuilder message = new StringBuilder(finding.sentence());
        finding.affected().filter(affected -> !affected.every()).ifPresent(affected -> message.append("\nvehicles: ")
                .append(affected.words()).append(", ").append(affected.tally()));
        finding.derivation().forEach(step -> message.append('\n').append(step));
        if (!finding.advice().isEmpty()) {
            message.append("\ntry: ").append(finding.advice());
        }
        return message.toString();
    }

    private static DiagnosticSeverity severity(Severity severity) {
        return switch (severity) {
            case ERROR -> DiagnosticSeverity.Error;
            case WARNING -> DiagnosticSeverity.Warning;
            case NOTE -> DiagnosticSeverity.Information;
        };
    }

    @Override
    public void progress(Path project, String what, long done, long total) {
        progresses.ifPresent(each -> each.told(project, what, done, total));
    }

    @Override
    public void solved(Path project) {
        if (asksAgain) {
            client.refreshInlayHints();
        }
    }

    @Override
    public void trouble(String message) {
        client.showMessage(new MessageParams(MessageType.Error, message));
    }
}
