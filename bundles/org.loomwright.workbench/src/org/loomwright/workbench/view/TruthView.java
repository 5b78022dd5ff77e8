// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.part.IShowInTarget;
import org.eclipse.ui.part.ShowInContext;
import org.eclipse.ui.part.ViewPart;
import org.loomwright.harness.Span;
import org.loomwright.quantity.Cancelled;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.focus.Choice;
import org.loomwright.workbench.focus.Focus;
import org.loomwright.workbench.truth.Rooms;
import org.loomwright.workbench.truth.Truth;

/**
 * What all views have in common. A view is made of two steps: {@link #work} works out, off the thread that draws, what
 * is to be seen; {@link #show} shows it. Both happen again when something new is known of the project, when another
 * project is looked at, when other vehicles are chosen, and when {@link #again} is called. A failure is told in the
 * view, which goes on showing what it showed.
 *
 * <p>A new view is a class of this kind, a line in {@code plugin.xml} and one in the perspective.
 *
 * @param <M> what is to be seen; immutable
 */
public abstract class TruthView<M> extends ViewPart implements IShowInTarget {

    private static final long PAUSE = 60;

    private final Rooms rooms = Shared.rooms();
    private final Focus focus = Shared.focus();
    private final Rooms.Listener truthListener = this::told;
    private final Runnable focusListener = this::again;
    private final Job job = Job.createSystem("Working out a view", this::run);
    private FocusTracker tracker;
    private Label line;
    private volatile Composite content;
    private volatile M model;

    /** Works out what is to be seen. Called off the thread that draws; may be cancelled. */
    protected abstract M work(Truth truth, Choice choice, IProgressMonitor monitor);

    /** Makes the controls, empty. */
    protected abstract void create(Composite parent);

    /** Shows what was worked out. Called on the thread that draws. */
    protected abstract void show(M now);

    /** Says in a few words what is shown; told above it. */
    protected abstract String words(M now);

    @Override
    public final void createPartControl(Composite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 2;
        layout.marginHeight = 2;
        all.setLayout(layout);
        line = new Label(all, SWT.WRAP);
        line.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        line.setText("No project is open in an editor yet.");
        Composite inner = new Composite(all, SWT.NONE);
        inner.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        inner.setLayout(new GridLayout());
        create(inner);
        content = inner;
        rooms.add(truthListener);
        focus.add(focusListener);
        tracker = new FocusTracker(getSite().getPage());
        tracker.follow();
        again();
    }

    @Override
    public void dispose() {
        rooms.remove(truthListener);
        focus.remove(focusListener);
        if (tracker != null) {
            tracker.stop();
        }
        job.cancel();
        super.dispose();
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }

    /** Follows the editor that somebody wants to see here. */
    @Override
    public final boolean show(ShowInContext context) {
        tracker.follow();
        again();
        return true;
    }

    /** Has it worked out again, soon. */
    protected final void again() {
        job.cancel();
        job.schedule(PAUSE);
    }

    /** Returns what is shown. */
    protected final Optional<M> model() {
        return Optional.ofNullable(model);
    }

    /** Returns the vehicles that are chosen. */
    protected final Choice choice() {
        return focus.choice();
    }

    /** Returns what the windows look at together. */
    protected final Focus focus() {
        return focus;
    }

    /** Shows a place of the project's sources in an editor. */
    protected final void open(Span span) {
        focus.project().ifPresent(project -> Places.open(getSite().getPage(), project, span));
    }

    /** Says what is being done while something is worked out. */
    protected final void telling(String words) {
        say(words, null);
    }

    private void told(IProject project, Truth truth) {
        if (focus.project().filter(project::equals).isPresent()) {
            again();
        }
    }

    private IStatus run(IProgressMonitor monitor) {
        Optional<IProject> project = focus.project();
        Optional<Truth> truth = project.flatMap(rooms::truth);
        if (truth.isEmpty()) {
            say(project.map(each -> "Reading " + each.getName() + " ...")
                    .orElse("Open a .loom file, or choose its project, to see something here."), null);
            return Status.OK_STATUS;
        }
        try {
            M now = work(truth.get(), focus.choice(), monitor);
            if (monitor.isCanceled()) {
                return Status.CANCEL_STATUS;
            }
            say(truth.get().failure().map(why -> "As of before: " + why + ". ").orElse("") + words(now), now);
        } catch (Cancelled e) {
            return Status.CANCEL_STATUS;
        } catch (RuntimeException | LinkageError | StackOverflowError e) {
            ILog.get().error("a view could not be worked out", e);
            say("This could not be worked out: " + e + ". The editor is not affected.", null);
        }
        return Status.OK_STATUS;
    }

    private void say(String words, M now) {
        Composite inner = content;
        if (inner == null || inner.isDisposed()) {
            return;
        }
        Display.getDefault().asyncExec(() -> {
            if (inner.isDisposed()) {
                return;
            }
            line.setText(words.replace("&", "&&"));
            if (now != null) {
                model = now;
                show(now);
            }
            line.requestLayout();
        });
    }
}
