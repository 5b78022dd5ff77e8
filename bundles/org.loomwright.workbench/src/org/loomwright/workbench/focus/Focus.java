// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.focus;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.core.resources.IProject;

/**
 * The project that the windows look at, the vehicles chosen in it, and the drawing or harness and the circuit that the
 * cursor is in.
 * Safe for use by several threads; listeners are called on the thread that makes the change.
 */
public final class Focus {

    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private final Map<IProject, Choice> choices = new ConcurrentHashMap<>();
    private volatile IProject project;
    private volatile String wiring = "";
    private volatile String circuit = "";

    /** Returns the project that is looked at. */
    public Optional<IProject> project() {
        return Optional.ofNullable(project);
    }

    /** Looks at a project. */
    public void look(IProject at) {
        if (at != null && !at.equals(project)) {
            project = at;
            wiring = "";
            circuit = "";
            tell();
        }
    }

    /** Returns the vehicles chosen in the project. */
    public Choice choice() {
        IProject at = project;
        return at == null ? Choice.ALL : choices.getOrDefault(at, Choice.ALL);
    }

    /** Chooses vehicles in the project that is looked at. */
    public void choose(Choice choice) {
        IProject at = project;
        if (at != null && !choice.equals(choices.put(at, choice))) {
            tell();
        }
    }

    /** Returns the name of the drawing or harness that the cursor is in; empty for none. */
    public String wiring() {
        return wiring;
    }

    /** Returns the name of the circuit there that the cursor was in last; empty for none. */
    public String circuit() {
        return circuit;
    }

    /** The cursor is in a drawing or harness, and there in a circuit; empty where it is in none. */
    public void enter(String name, String of) {
        boolean other = !name.equals(wiring);
        if (other || !of.isEmpty() && !of.equals(circuit)) {
            wiring = name;
            circuit = of;
            tell();
        }
    }

    public void add(Runnable listener) {
        listeners.add(listener);
    }

    public void remove(Runnable listener) {
        listeners.remove(listener);
    }

    /** Has all that follow look again: something is shown otherwise now. */
    public void refresh() {
        tell();
    }

    private void tell() {
        listeners.forEach(Runnable::run);
    }
}
