// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Target;
import org.loomwright.ide.session.Workspace;

/** What is asked and told about folders. */
final class FolderQuestions implements WorkspaceService {

    private final Desk desk;
    private final Uris uris;
    private final Liking liking;
    private List<Path> open = List.of();

    FolderQuestions(Desk desk, Uris uris, Liking liking) {
        this.liking = liking;
        this.desk = desk;
        this.uris = uris;
    }

    void open(List<Path> folders) {
        open = List.copyOf(folders);
        desk.workspace().ifPresent(workspace -> workspace.in(open));
    }

    @Override
    public CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>> symbol(
            WorkspaceSymbolParams params) {
        return desk.<WorkspaceSymbol>askAll((moment, root, cancel) -> {
            List<WorkspaceSymbol> found = new ArrayList<>();
            for (Target each : Services.search(moment, params.getQuery(), cancel)) {
                uris.of(Path.of(root), each.name().file()).ifPresent(uri -> found.add(new WorkspaceSymbol(
                        each.symbol().name(), Kinds.symbol(each.symbol().kind()), Either.forLeft(new Location(uri,
                                Places.range(moment.lines(each.name().file()), each.name()))),
                        each.symbol().owner())));
            }
            return found;
        }).thenApply(Either::forRight);
    }

    @Override
    public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
        desk.workspace().ifPresent(Workspace::refresh);
    }

    @Override
    public void didChangeConfiguration(DidChangeConfigurationParams params) {
        liking.changed(params.getSettings());
    }

    @Override
    public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params) {
        List<Path> next = new ArrayList<>(open);
        params.getEvent().getRemoved().forEach(folder -> path(folder).ifPresent(next::remove));
        params.getEvent().getAdded().forEach(folder -> path(folder).ifPresent(next::add));
        open(next);
    }

    private Optional<Path> path(WorkspaceFolder folder) {
        return uris.path(folder.getUri());
    }
}
