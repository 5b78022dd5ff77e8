// SPDX-License-Identifier: EPL-2.0
/**
 * The language services: what an editor needs to know about sources while somebody writes them. One implementation,
 * two doors: the workbench calls it in its own process, any other editor through the Language Server Protocol
 * ({@code ide.lsp}, the only package with types of that protocol).
 *
 * <p>The stages, each a package: {@code session} keeps projects with their unsaved texts and finds what is wrong;
 * {@code project} is one project at one moment; {@code names} tells what a word means; {@code complete}, {@code hover},
 * {@code navigate}, {@code outline}, {@code format}, {@code act} and {@code inlay} answer questions about one moment.
 *
 * <p>How a door uses it:
 * <pre>
 * Workspace workspace = Workspace.open(LoomReader.create(), listener);   // the listener hears findings, file by file
 * workspace.opened(path, version, text);                                 // an editor was opened
 * workspace.changed(path, version, text);                                // a keystroke: fast findings now, deep later
 * workspace.ask(path, (moment, file, cancel) -&gt; Services.hover(moment, file, offset, cancel))   // a future
 * workspace.closed(path);
 * </pre>
 * {@link org.loomwright.ide.Services} lists every question. Places are offsets in the text of a file, counted in UTF-16
 * units; results are spans and text edits of {@code org.loomwright.harness}. A question is answered on reading threads;
 * a change of the project cancels it ({@link org.loomwright.quantity.Cancelled}), so that nobody gets an answer about a
 * text that is no more.
 */
package org.loomwright.ide;
