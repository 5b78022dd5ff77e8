// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeCapabilities;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.lsp4j.HoverCapabilities;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.loomwright.harness.LineIndex;
import org.loomwright.ide.act.Action;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.ide.complete.Templates.Fitting;
import org.loomwright.ide.hover.Hover;
import org.loomwright.ide.inlay.Inlay;
import org.loomwright.ide.outline.Folds;
import org.loomwright.ide.outline.OutlineItem;
import org.loomwright.ide.project.Moment;

/** Answers in the types of the protocol. */
final class Rendering {

    /** The most inlays in an answer: a client asks for what it shows, and no screen shows more. */
    static final int MOST_INLAYS = 2_000;
    /** The most proposals in an answer; where there are more, the client asks again when more is typed. */
    static final int MOST_PROPOSALS = 500;
    private static final String RANK = "%05d";

    private boolean markdown;
    private boolean snippets;
    private boolean adjusts;
    private int mostFolds = Integer.MAX_VALUE;

    void suit(ClientCapabilities capabilities) {
        TextDocumentClientCapabilities texts = capabilities == null ? null : capabilities.getTextDocument();
        HoverCapabilities hover = texts == null ? null : texts.getHover();
        markdown = hover != null && hover.getContentFormat() != null
                && hover.getContentFormat().contains(MarkupKind.MARKDOWN);
        CompletionItemCapabilities items = texts == null || texts.getCompletion() == null ? null
                : texts.getCompletion().getCompletionItem();
        snippets = items != null && Boolean.TRUE.equals(items.getSnippetSupport());
        adjusts = items != null && items.getInsertTextModeSupport() != null
                && items.getInsertTextModeSupport().getValueSet().contains(InsertTextMode.AdjustIndentation);
        FoldingRangeCapabilities folding = texts == null ? null : texts.getFoldingRange();
        mostFolds = folding == null || folding.getRangeLimit() == null || folding.getRangeLimit() < 0
                ? Integer.MAX_VALUE : folding.getRangeLimit();
    }

    /** The most folds that the client wants. */
    int mostFolds() {
        return mostFolds;
    }

    /** Proposals and, behind them, templates for a client that can fill them in. */
    CompletionList completions(LineIndex lines, List<Proposal> proposals, List<Fitting> templates) {
        List<CompletionItem> items = new ArrayList<>();
        for (Proposal each : proposals.subList(0, Math.min(MOST_PROPOSALS, proposals.size()))) {
            CompletionItem item = new CompletionItem(each.text());
            item.setKind(Kinds.completion(each.kind()));
            item.setDetail(each.detail().isEmpty() ? null : each.detail());
            if (!each.more().isEmpty()) {
                item.setDocumentation(each.more());
            }
            item.setSortText(String.format(java.util.Locale.ROOT, RANK, items.size()));
            item.setTextEdit(Either.forLeft(new TextEdit(Places.range(lines, each.where()), each.text())));
            items.add(item);
        }
        if (snippets && items.size() == proposals.size()) {
            templates.forEach(each -> items.add(template(lines, each, items.size())));
        }
        return new CompletionList(proposals.size() > MOST_PROPOSALS, items);
    }

    private CompletionItem template(LineIndex lines, Fitting fitting, int rank) {
        CompletionItem item = new CompletionItem(fitting.template().word() + " ...");
        item.setKind(CompletionItemKind.Snippet);
        item.setDetail(fitting.template().meaning());
        item.setDocumentation(fitting.template().text());
        item.setFilterText(fitting.template().word());
        item.setSortText(String.format(java.util.Locale.ROOT, RANK, rank));
        item.setInsertTextFormat(InsertTextFormat.Snippet);
        if (adjusts) {
            item.setInsertTextMode(InsertTextMode.AdjustIndentation);
        }
        item.setTextEdit(Either.forLeft(new TextEdit(Places.range(lines, fitting.where()),
                fitting.template().snippet())));
        return item;
    }

    org.eclipse.lsp4j.Hover hover(LineIndex lines, Hover hover) {
        MarkupContent content = new MarkupContent(markdown ? MarkupKind.MARKDOWN : MarkupKind.PLAINTEXT,
                markdown ? markdown(hover) : hover.text());
        return new org.eclipse.lsp4j.Hover(content, Places.range(lines, hover.where()));
    }

    private static String markdown(Hover hover) {
        StringBuilder text = new StringBuilder("**").append(escaped(hover.title())).append("**\n");
        for (Hover.Row row : hover.rows()) {
            text.append("\n- ").append(row.label().isEmpty() ? "" : "*" + escaped(row.label()) + "*: ")
                    .append(escaped(row.text()));
        }
        return text.toString();
    }

    /** What a source says is shown as it is. */
    private static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        for (char c : text.toCharArray()) {
            escaped.append("\\`*_{}[]<>#|~".indexOf(c) >= 0 ? "\\" : "").append(c);
        }
        return escaped.toString();
    }

    static DocumentSymbol symbol(LineIndex lines, OutlineItem item) {
        DocumentSymbol symbol = new DocumentSymbol(item.label(), Kinds.symbol(item.kind()),
                Places.range(lines, item.whole()), Places.range(lines, item.name()), item.detail());
        symbol.setChildren(item.children().stream().map(child -> symbol(lines, child)).toList());
        return symbol;
    }

    static FoldingRange fold(Folds.Fold fold) {
        FoldingRange range = new FoldingRange(fold.first() - 1, fold.last() - 1);
        range.setKind(fold.comment() ? FoldingRangeKind.Comment : FoldingRangeKind.Region);
        return range;
    }

    /** Whether the client asks for actions of a kind; without a filter it asks for all. */
    static boolean wants(CodeActionContext context, String kind) {
        return context == null || context.getOnly() == null || context.getOnly().isEmpty()
                || context.getOnly().stream().anyMatch(only -> kind.equals(only) || kind.startsWith(only + "."));
    }

    static CodeAction action(Action action, WorkspaceEdit edit, CodeActionContext context, Moment moment) {
        CodeAction made = new CodeAction(action.title());
        made.setKind(CodeActionKind.QuickFix);
        made.setEdit(edit);
        made.setIsPreferred(action.certain());
        action.finding().ifPresent(finding -> {
            LineIndex lines = moment.lines(finding.place().span().file());
            var range = Places.range(lines, finding.place().span());
            List<Diagnostic> mended = context == null ? List.of() : context.getDiagnostics().stream()
                    .filter(each -> each.getRange().equals(range) && each.getCode() != null
                            && finding.rule().equals(each.getCode().isLeft() ? each.getCode().getLeft() : ""))
                    .toList();
            made.setDiagnostics(mended);
        });
        return made;
    }

    static CodeAction all(Action action, WorkspaceEdit edit) {
        CodeAction made = new CodeAction(action.title());
        made.setKind(CodeActionKind.SourceFixAll);
        made.setEdit(edit);
        return made;
    }

    static InlayHint inlay(LineIndex lines, Inlay inlay) {
        InlayHint hint = new InlayHint(Places.position(lines, inlay.offset()), Either.forLeft(inlay.text()));
        hint.setPaddingLeft(true);
        if (!inlay.tooltip().isEmpty()) {
            hint.setTooltip(inlay.tooltip());
        }
        return hint;
    }
}
