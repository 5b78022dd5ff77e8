// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.loomwright.harness.LineIndex;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Rename;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Question;
import org.loomwright.ide.session.Workspace;

/** What is asked and told about texts. */
final class TextQuestions implements TextDocumentService {

    private final Desk desk;
    private final Uris uris;
    private final Liking liking;
    private final Buffers buffers = new Buffers();
    private final Rendering rendering = new Rendering();

    TextQuestions(Desk desk, Uris uris, Liking liking) {
        this.liking = liking;
        this.desk = desk;
        this.uris = uris;
    }

    /** Suits answers to what the client can show. */
    void suit(ClientCapabilities capabilities) {
        rendering.suit(capabilities);
    }

    // ------------------------------------------------------------ what is told

    @Override
    public void didOpen(DidOpenTextDocumentParams params) {
        String uri = params.getTextDocument().getUri();
        buffers.open(uri, params.getTextDocument().getText());
        uris.noted(uri).ifPresent(file -> desk.workspace().ifPresent(workspace -> workspace.opened(file,
                params.getTextDocument().getVersion(), params.getTextDocument().getText())));
    }

    @Override
    public void didChange(DidChangeTextDocumentParams params) {
        String uri = params.getTextDocument().getUri();
        buffers.change(uri, params.getContentChanges()).ifPresent(text -> uris.path(uri)
                .ifPresent(file -> desk.workspace().ifPresent(workspace -> workspace.changed(file,
                        params.getTextDocument().getVersion() == null ? 0 : params.getTextDocument().getVersion(),
                        text))));
    }

    @Override
    public void didClose(DidCloseTextDocumentParams params) {
        buffers.close(params.getTextDocument().getUri());
        file(params.getTextDocument()).ifPresent(file -> desk.workspace()
                .ifPresent(workspace -> workspace.closed(file)));
    }

    @Override
    public void didSave(DidSaveTextDocumentParams params) {
        desk.workspace().ifPresent(Workspace::refresh);
    }

    // ------------------------------------------------------------ what is asked

    private Optional<Path> file(TextDocumentIdentifier document) {
        return uris.path(document.getUri());
    }

    private <T> CompletableFuture<T> ask(TextDocumentIdentifier document, T none, Question<T> question) {
        return desk.ask(file(document), none, (moment, file, cancel) -> moment.has(file)
                ? question.answer(moment, file, cancel) : none);
    }

    private static int offset(Moment moment, String file, Position position) {
        return Places.offset(moment.lines(file), position);
    }

    /** The client's name of a file of the project that a document belongs to. */
    private Optional<String> uri(TextDocumentIdentifier document, String name) {
        return file(document).flatMap(file -> desk.workspace().flatMap(workspace -> workspace.rootOf(file)))
                .flatMap(root -> uris.of(root, name));
    }

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
        return ask(params.getTextDocument(), Either.forLeft(List.of()), (moment, file, cancel) -> {
            int offset = offset(moment, file, params.getPosition());
            return Either.forRight(rendering.completions(moment.lines(file),
                    Services.complete(moment, file, offset, cancel), Services.templates(moment, file, offset)));
        });
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams params) {
        return ask(params.getTextDocument(), null, (moment, file, cancel) -> Services.hover(moment, file,
                        offset(moment, file, params.getPosition()), liking.shown(), cancel)
                .map(hover -> rendering.hover(moment.lines(file), hover)).orElse(null));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(
            DefinitionParams params) {
        return ask(params.getTextDocument(), Either.forLeft(List.of()), (moment, file, cancel) -> {
            List<Location> found = new ArrayList<>();
            Services.definition(moment, file, offset(moment, file, params.getPosition())).forEach(target ->
                    uri(params.getTextDocument(), target.name().file()).ifPresent(uri -> found.add(new Location(uri,
                            Places.range(moment.lines(target.name().file()), target.name())))));
            return Either.forLeft(found);
        });
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> {
            List<Location> found = new ArrayList<>();
            boolean declarations = params.getContext() == null || params.getContext().isIncludeDeclaration();
            Services.references(moment, file, offset(moment, file, params.getPosition()), cancel).stream()
                    .filter(each -> declarations || !each.declares())
                    .forEach(each -> uri(params.getTextDocument(), each.span().file()).ifPresent(uri -> found.add(
                            new Location(uri, Places.range(moment.lines(each.span().file()), each.span())))));
            return found;
        });
    }

    @Override
    public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(DocumentHighlightParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Services.highlights(moment, file,
                        offset(moment, file, params.getPosition())).stream()
                .map(each -> new DocumentHighlight(Places.range(moment.lines(file), each.span()),
                        each.declares() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read)).toList());
    }

    @Override
    public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(
            DocumentSymbolParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Services.outline(moment, file)
                .stream().map(item -> Either.<SymbolInformation, DocumentSymbol>forRight(
                        Rendering.symbol(moment.lines(file), item))).toList());
    }

    @Override
    public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Services.folds(moment, file).stream()
                .limit(rendering.mostFolds()).map(Rendering::fold).toList());
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
        return ask(params.getTextDocument(), new SemanticTokens(List.of()), (moment, file, cancel) -> Tokens.of(
                moment.lines(file), Services.colours(moment, file), 0, Integer.MAX_VALUE));
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensRange(SemanticTokensRangeParams params) {
        return ask(params.getTextDocument(), new SemanticTokens(List.of()), (moment, file, cancel) -> {
            int from = offset(moment, file, params.getRange().getStart());
            int to = offset(moment, file, params.getRange().getEnd());
            return Tokens.of(moment.lines(file), Services.colours(moment, file, from, to), from, to);
        });
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Places.edits(moment.lines(file),
                Services.format(moment, file)));
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> rangeFormatting(DocumentRangeFormattingParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Places.edits(moment.lines(file),
                Services.format(moment, file, offset(moment, file, params.getRange().getStart()),
                        offset(moment, file, params.getRange().getEnd()))));
    }

    @Override
    public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(
            PrepareRenameParams params) {
        return ask(params.getTextDocument(), null, (moment, file, cancel) -> Services.prepareRename(moment, file,
                        offset(moment, file, params.getPosition()))
                .map(span -> Either3.<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forFirst(
                        Places.range(moment.lines(file), span))).orElse(null));
    }

    @Override
    public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
        return ask(params.getTextDocument(), null, (moment, file, cancel) -> {
            Rename.Renamed renamed = Services.rename(moment, file, offset(moment, file, params.getPosition()),
                    params.getNewName(), cancel);
            if (!renamed.refusal().isEmpty()) {
                throw new ResponseErrorException(new ResponseError(ResponseErrorCode.RequestFailed,
                        renamed.refusal(), null));
            }
            return edit(params.getTextDocument(), moment, renamed.edits());
        });
    }

    private WorkspaceEdit edit(TextDocumentIdentifier document, Moment moment,
            List<org.loomwright.harness.TextEdit> edits) {
        Map<String, List<TextEdit>> changes = new LinkedHashMap<>();
        for (org.loomwright.harness.TextEdit edit : edits) {
            LineIndex lines = moment.lines(edit.span().file());
            uri(document, edit.span().file()).ifPresent(uri -> changes.computeIfAbsent(uri, key -> new ArrayList<>())
                    .add(new TextEdit(Places.range(lines, edit.span()), edit.text())));
        }
        return new WorkspaceEdit(changes);
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> {
            List<Either<Command, CodeAction>> actions = new ArrayList<>();
            int from = offset(moment, file, params.getRange().getStart());
            int to = offset(moment, file, params.getRange().getEnd());
            if (Rendering.wants(params.getContext(), org.eclipse.lsp4j.CodeActionKind.QuickFix)) {
                Services.actions(moment, file, from, to).forEach(action -> actions.add(Either.forRight(
                        Rendering.action(action, edit(params.getTextDocument(), moment, action.edits()),
                                params.getContext(), moment))));
            }
            if (Rendering.wants(params.getContext(), org.eclipse.lsp4j.CodeActionKind.SourceFixAll)) {
                Services.mendAll(moment, file).ifPresent(action -> actions.add(Either.forRight(Rendering.all(action,
                        edit(params.getTextDocument(), moment, action.edits())))));
            }
            return actions;
        });
    }

    @Override
    public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
        return ask(params.getTextDocument(), List.of(), (moment, file, cancel) -> Services.inlays(moment, file,
                        offset(moment, file, params.getRange().getStart()),
                        offset(moment, file, params.getRange().getEnd()), liking.shown().unit(), cancel).stream()
                .limit(Rendering.MOST_INLAYS).map(inlay -> Rendering.inlay(moment.lines(file), inlay)).toList());
    }
}
