// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.CompareUI;
import org.eclipse.compare.structuremergeviewer.ICompareInput;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.Viewer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.loomwright.app.BadCall;
import org.loomwright.app.adopt.AdoptChange;
import org.loomwright.app.adopt.AdoptChange.Adopted;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.change.Change;
import org.loomwright.quantity.Cancelled;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.guard.OffUi;

/**
 * The changes between two sides as a tree, with filters, the vehicles that feel each and what follows. Choosing a
 * change shows it in the text; it can be taken over to either side that can be changed. The left side is the new one,
 * as the platform has it: a file is compared with what it was.
 */
public final class ChangesViewer extends Viewer {

    private static final long PAUSE = 150;

    private final CompareConfiguration configuration;
    private final Board board;
    private final ChangesTree tree;
    private final Set<Aspect> aspects = EnumSet.allOf(Aspect.class);
    private final Job job = Job.create("Comparing", this::run);
    private volatile ICompareInput input;
    private volatile Map<String, byte[]> typed = Map.of();
    private Changes changes;

    public ChangesViewer(Composite parent, CompareConfiguration configuration) {
        this.configuration = configuration;
        board = Board.of(configuration);
        tree = new ChangesTree(parent, this);
        tree.control().setData(CompareUI.COMPARE_VIEWER_TITLE, "Changes");
        board.whenChanged(this::textChanged);
        tree.control().addDisposeListener(event -> job.cancel());
    }

    @Override
    public Control getControl() {
        return tree.control();
    }

    @Override
    public Object getInput() {
        return input;
    }

    @Override
    public ISelection getSelection() {
        return StructuredSelection.EMPTY;
    }

    @Override
    public void setSelection(ISelection selection, boolean reveal) {
        // nothing is chosen from outside
    }

    @Override
    public void setInput(Object now) {
        input = now instanceof ICompareInput compared ? compared : null;
        typed = Map.of();
        refresh();
    }

    @Override
    public void refresh() {
        job.cancel();
        if (input != null) {
            job.schedule();
        }
    }

    /** Shows the changes of an aspect, or hides them. */
    void filter(Aspect aspect, boolean shown) {
        if (shown) {
            aspects.add(aspect);
        } else {
            aspects.remove(aspect);
        }
        if (changes != null) {
            tree.show(changes.only(aspects));
        }
    }

    /** Returns where a side of the comparison stands: {@code left} or {@code right}. */
    String side(boolean left) {
        return left != board.isMirrored() ? "left" : "right";
    }

    /** Shows a change in the text on both sides. */
    void reveal(Change change) {
        change.after().or(change::before).ifPresent(span -> board.reveal(change.after().isPresent(), span));
        change.before().ifPresent(span -> board.reveal(false, span));
    }

    /** Returns whether a change can be taken over to a side. */
    boolean canTake(Change change, boolean toLeft) {
        String name = input == null ? "" : Contents.name(input);
        boolean here = change.before().or(change::after).filter(span -> span.file().equals(name)).isPresent();
        return here && board.isEditable(toLeft);
    }

    /** Takes a change over to a side; tells why when it cannot. */
    void take(Change change, boolean toLeft) {
        String now = board.text(true);
        String old = board.text(false);
        if (now == null || old == null || changes == null) {
            return;
        }
        Adopted adopted = AdoptChange.take(changes.compared().comparison(), change, toLeft, old, now,
                Contents.name(input));
        if (adopted.edits().isEmpty()) {
            tree.say("Not taken over: " + adopted.refusal() + ".");
        } else {
            board.apply(toLeft, adopted.edits());
        }
    }

    private void textChanged() {
        Map<String, byte[]> now = new HashMap<>();
        Optional.ofNullable(board.text(true)).ifPresent(text -> now.put("left", bytes(text)));
        Optional.ofNullable(board.text(false)).ifPresent(text -> now.put("right", bytes(text)));
        typed = now;
        job.cancel();
        job.schedule(PAUSE);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private IStatus run(IProgressMonitor monitor) {
        ICompareInput compared = input;
        if (compared == null) {
            return Status.OK_STATUS;
        }
        try {
            Sides sides = sides(compared);
            Changes found = Changes.of(sides, Shared.rooms().reader(), Runtime.getRuntime().availableProcessors(),
                    OffUi.cancel(monitor), OffUi.progress(monitor));
            show(compared, found, "");
        } catch (Cancelled e) {
            return Status.CANCEL_STATUS;
        } catch (BadCall e) {
            show(compared, null, e.getMessage() + ". The texts below can still be compared.");
        } catch (CoreException | IOException | RuntimeException | LinkageError | StackOverflowError e) {
            ILog.get().error("the comparison failed", e);
            show(compared, null, "The comparison failed: " + e + ". The texts below can still be compared.");
        }
        return Status.OK_STATUS;
    }

    /** The left side of the platform is the new one here. */
    private Sides sides(ICompareInput compared) throws CoreException, IOException {
        Sides sides = Contents.of(compared, configuration);
        Map<String, byte[]> old = new HashMap<>(sides.now());
        Map<String, byte[]> now = new HashMap<>(sides.old());
        String name = Contents.name(compared);
        Optional.ofNullable(typed.get("left")).ifPresent(bytes -> now.put(name, bytes));
        Optional.ofNullable(typed.get("right")).ifPresent(bytes -> old.put(name, bytes));
        return new Sides(old, now, sides.title());
    }

    private void show(ICompareInput compared, Changes found, String words) {
        Display.getDefault().asyncExec(() -> {
            if (!tree.control().isDisposed() && compared == input) {
                changes = found;
                if (found == null) {
                    tree.say(words);
                } else {
                    tree.show(found.only(aspects));
                }
            }
        });
    }
}
