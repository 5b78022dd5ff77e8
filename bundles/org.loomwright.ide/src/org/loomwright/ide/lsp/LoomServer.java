// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.CodeActionOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.DidChangeWatchedFilesRegistrationOptions;
import org.eclipse.lsp4j.FileSystemWatcher;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.Registration;
import org.eclipse.lsp4j.RegistrationParams;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SaveOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.TextDocumentSyncOptions;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceFoldersOptions;
import org.eclipse.lsp4j.WorkspaceServerCapabilities;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.lang.LoomReader;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;

/** The life of a server for one client: what it can do, which folders are open, and its end. */
final class LoomServer implements LanguageServer, AutoCloseable {

    private final Supplier<LoomReader> reader;
    private final Supplier<BookRuleEngine> engine;
    private final Settings settings;
    private final Pace pace;
    private final String version;
    private final CompletableFuture<Void> exit;
    private final Uris uris = new Uris();
    private final Desk desk = new Desk();
    private final Liking liking = new Liking();
    private final TextQuestions texts = new TextQuestions(desk, uris, liking);
    private final FolderQuestions folders = new FolderQuestions(desk, uris, liking);
    private LanguageClient client;
    private boolean watches;
    private volatile boolean shutDown;

    LoomServer(Supplier<LoomReader> reader, Supplier<BookRuleEngine> engine, Settings settings, Pace pace,
            String version, CompletableFuture<Void> exit) {
        this.reader = reader;
        this.engine = engine;
        this.settings = settings;
        this.pace = pace;
        this.version = version;
        this.exit = exit;
    }

    void connect(LanguageClient other) {
        client = other;
    }

    boolean isShutDown() {
        return shutDown;
    }

    @Override
    public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        if (desk.workspace().isPresent() || shutDown) {
            throw new ResponseErrorException(new ResponseError(ResponseErrorCode.InvalidRequest,
                    "the server was initialized before", null));
        }
        Workspace workspace = new Workspace(reader.get(), engine.get(), settings, pace, new Telling(client, uris,
                showsProgress(params) ? Optional.of(new Progresses(client, pace.pause().multipliedBy(2)))
                        : Optional.empty(), asksForInlaysAgain(params)));
        desk.open(workspace);
        List<Path> open = new ArrayList<>();
        if (params.getWorkspaceFolders() != null) {
            params.getWorkspaceFolders().stream().map(WorkspaceFolder::getUri)
                    .forEach(uri -> uris.path(uri).ifPresent(open::add));
        }
        if (open.isEmpty()) {
            rootOf(params).flatMap(uris::path).ifPresent(open::add);
        }
        folders.open(open);
        var capabilities = params.getCapabilities();
        texts.suit(capabilities);
        liking.greet(client, capabilities, params.getInitializationOptions(), asksForInlaysAgain(params));
        watches = capabilities != null && capabilities.getWorkspace() != null
                && capabilities.getWorkspace().getDidChangeWatchedFiles() != null
                && Boolean.TRUE.equals(capabilities.getWorkspace().getDidChangeWatchedFiles()
                        .getDynamicRegistration());
        return CompletableFuture.completedFuture(new InitializeResult(capabilities(),
                new ServerInfo("loomwright", version)));
    }

    private static boolean showsProgress(InitializeParams params) {
        return params.getCapabilities() != null && params.getCapabilities().getWindow() != null
                && Boolean.TRUE.equals(params.getCapabilities().getWindow().getWorkDoneProgress());
    }

    private static boolean asksForInlaysAgain(InitializeParams params) {
        return params.getCapabilities() != null && params.getCapabilities().getWorkspace() != null
                && params.getCapabilities().getWorkspace().getInlayHint() != null
                && Boolean.TRUE.equals(params.getCapabilities().getWorkspace().getInlayHint().getRefreshSupport());
    }

    /** How clients named the one folder before there could be several. */
    @SuppressWarnings("deprecation")
    private static Optional<String> rootOf(InitializeParams params) {
        return Optional.ofNullable(params.getRootUri());
    }

    private static ServerCapabilities capabilities() {
        ServerCapabilities can = new ServerCapabilities();
        TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
        sync.setOpenClose(true);
        sync.setChange(TextDocumentSyncKind.Incremental);
        sync.setSave(new SaveOptions(false));
        can.setTextDocumentSync(sync);
        can.setCompletionProvider(new CompletionOptions(false, List.of(":")));
        can.setHoverProvider(true);
        can.setDefinitionProvider(true);
        can.setReferencesProvider(true);
        can.setDocumentHighlightProvider(true);
        can.setDocumentSymbolProvider(true);
        can.setWorkspaceSymbolProvider(true);
        can.setFoldingRangeProvider(true);
        can.setDocumentFormattingProvider(true);
        can.setDocumentRangeFormattingProvider(true);
        can.setRenameProvider(new RenameOptions(true));
        can.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix,
                CodeActionKind.SourceFixAll)));
        can.setInlayHintProvider(true);
        can.setSemanticTokensProvider(new SemanticTokensWithRegistrationOptions(Tokens.LEGEND, true, true));
        WorkspaceFoldersOptions several = new WorkspaceFoldersOptions();
        several.setSupported(true);
        several.setChangeNotifications(true);
        can.setWorkspace(new WorkspaceServerCapabilities(several));
        return can;
    }

    @Override
    public void initialized(InitializedParams params) {
        List<Registration> wanted = new ArrayList<>();
        if (watches) {
            wanted.add(new Registration("loom-files", "workspace/didChangeWatchedFiles",
                    new DidChangeWatchedFilesRegistrationOptions(List.of(new FileSystemWatcher(
                            Either.forLeft("**/*.loom"))))));
        }
        if (liking.isRegistered()) {
            wanted.add(new Registration("loom-settings", "workspace/didChangeConfiguration",
                    Map.of("section", Liking.SECTION)));
        }
        if (!wanted.isEmpty()) {
            client.registerCapability(new RegistrationParams(wanted));
        }
        liking.ask();
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        shutDown = true;
        close();
        return CompletableFuture.completedFuture(null);
    }

    @Override
    public void exit() {
        exit.complete(null);
    }

    @Override
    public void setTrace(SetTraceParams params) {
        // there is nothing to trace that the client does not see itself
    }

    @Override
    public TextDocumentService getTextDocumentService() {
        return texts;
    }

    @Override
    public WorkspaceService getWorkspaceService() {
        return folders;
    }

    @Override
    public void close() {
        desk.close();
    }
}
