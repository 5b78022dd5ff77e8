// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.InvocationTargetException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.CompareEditorInput;
import org.eclipse.compare.ITypedElement;
import org.eclipse.compare.structuremergeviewer.DiffNode;
import org.eclipse.compare.structuremergeviewer.Differencer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.loomwright.app.BadCall;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.revision.GitReader;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.truth.ProjectSources;

/**
 * A project at two revisions of git, or at one and as it is now. Shows the files that differ; for each of them the
 * changes and the texts. What is as it is now can be changed.
 */
public final class RevisionInput extends CompareEditorInput {

    private final IProject project;
    private final String old;
    private final String now;
    private final List<WorkspaceFile> files = new CopyOnWriteArrayList<>();

    /**
     * @param old the older revision, as git understands it
     * @param now the newer one; empty for what is in the workspace
     */
    public RevisionInput(IProject project, String old, String now) {
        super(new CompareConfiguration());
        this.project = project;
        this.old = old;
        this.now = now;
        CompareConfiguration configuration = getCompareConfiguration();
        configuration.setLeftLabel(now.isEmpty() ? project.getName() + " as it is now" : now);
        configuration.setRightLabel(old);
        configuration.setLeftEditable(now.isEmpty());
        configuration.setRightEditable(false);
        setTitle(project.getName() + ": " + old + " and " + (now.isEmpty() ? "now" : now));
    }

    @Override
    protected Object prepareInput(IProgressMonitor monitor) throws InvocationTargetException {
        monitor.beginTask("Reading " + project.getName(), IProgressMonitor.UNKNOWN);
        try {
            Map<String, byte[]> before = revision(old);
            Map<String, byte[]> after = now.isEmpty() ? ProjectSources.of(project) : revision(now);
            getCompareConfiguration().setProperty(Sides.KEY, new Sides(after, before, project.getName()));
            DiffNode root = new DiffNode(Differencer.NO_CHANGE);
            TreeSet<String> names = new TreeSet<>(before.keySet());
            names.addAll(after.keySet());
            for (String name : names) {
                add(root, name, before.get(name), after.get(name));
            }
            if (!root.hasChildren()) {
                setMessage("Nothing differs between " + old + " and " + (now.isEmpty() ? "now" : now) + ".");
                return null;
            }
            return root;
        } catch (BadCall e) {
            setMessage(e.getMessage());
            return null;
        } catch (IOException e) {
            throw new InvocationTargetException(e);
        } finally {
            monitor.done();
        }
    }

    private void add(DiffNode root, String name, byte[] before, byte[] after) {
        if (Arrays.equals(before, after)) {
            return;
        }
        int kind = before == null ? Differencer.ADDITION : after == null ? Differencer.DELETION : Differencer.CHANGE;
        ITypedElement left = after == null ? null : now.isEmpty() ? editable(name) : new Snapshot(name, after);
        new DiffNode(root, kind, null, left, before == null ? null : new Snapshot(name, before));
    }

    private ITypedElement editable(String name) {
        WorkspaceFile node = new WorkspaceFile(file(name));
        files.add(node);
        return node;
    }

    /**
     * Writes what was taken over. Where the sides stand exchanged on the screen, the platform asks whether the side
     * that stands at the right may be changed, is answered for the right side of the comparison, and keeps nothing.
     */
    @Override
    public void saveChanges(IProgressMonitor monitor) throws CoreException {
        CompareConfiguration configuration = getCompareConfiguration();
        configuration.setRightEditable(configuration.isLeftEditable());
        try {
            super.saveChanges(monitor);
        } finally {
            configuration.setRightEditable(false);
        }
        for (WorkspaceFile each : files) {
            each.commit(monitor);
        }
    }

    private IFile file(String name) {
        return project.getFile(IPath.fromPortableString(name));
    }

    private Map<String, byte[]> revision(String revision) throws BadCall, IOException {
        OffUi.require("reading git");
        if (project.getLocation() == null) {
            throw new BadCall(project.getName() + " is not in a folder of this computer, so git cannot be asked");
        }
        ProjectPlace place = new GitReader().read(project.getLocation().toPath(), revision, ".", false);
        Map<String, byte[]> files = new TreeMap<>();
        for (Input input : place.inputs()) {
            try (InputStream in = input.content().open()) {
                files.put(input.name(), in.readNBytes(Loader.LARGEST + 1));
            }
        }
        return files;
    }
}
