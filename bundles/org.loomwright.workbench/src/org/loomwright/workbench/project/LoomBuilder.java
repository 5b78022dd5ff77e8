// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceDelta;
import org.eclipse.core.resources.IncrementalProjectBuilder;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.OperationCanceledException;
import org.loomwright.quantity.Cancelled;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.ProjectRoom;
import org.loomwright.workbench.truth.ProjectSources;
import org.loomwright.workbench.truth.Truth;

/**
 * Checks a project when its files are saved, and marks what was found. Only what a change affects is read and checked
 * anew, and only the markers of files in which the findings differ are set again.
 */
public final class LoomBuilder extends IncrementalProjectBuilder {

    /** Id of the builder. */
    public static final String ID = Shared.ID + ".builder";

    @Override
    protected IProject[] build(int kind, Map<String, String> arguments, IProgressMonitor monitor)
            throws CoreException {
        Optional<ProjectRoom> room = Shared.rooms().room(getProject());
        if (room.isEmpty()) {
            return null;
        }
        IResourceDelta delta = kind == FULL_BUILD ? null : getDelta(getProject());
        Map<String, Optional<byte[]>> changes = new LinkedHashMap<>();
        if (delta != null) {
            delta.accept(each -> collect(each, changes));
        } else {
            getProject().accept(each -> collect(each, changes));
        }
        if (delta != null && changes.isEmpty()) {
            return null;
        }
        try {
            // files that are gone although nobody told of it, after the workbench was killed
            Truth truth = room.get().take(changes, monitor);
            FindingMarkers.set(getProject(), truth, kind == FULL_BUILD || delta == null);
        } catch (Cancelled e) {
            forgetLastBuiltState();
            if (monitor.isCanceled()) {
                throw new OperationCanceledException();
            }
            needRebuild();
        }
        return null;
    }

    @Override
    protected void clean(IProgressMonitor monitor) throws CoreException {
        getProject().deleteMarkers(FindingMarkers.TYPE, true, IResource.DEPTH_INFINITE);
    }

    private static boolean collect(IResourceDelta delta, Map<String, Optional<byte[]>> changes) {
        IResource resource = delta.getResource();
        if (ProjectSources.isSource(resource)) {
            boolean text = delta.getKind() != IResourceDelta.CHANGED
                    || (delta.getFlags() & (IResourceDelta.CONTENT | IResourceDelta.REPLACED
                    | IResourceDelta.ENCODING)) != 0;
            if (text) {
                changes.put(ProjectSources.name(resource), delta.getKind() == IResourceDelta.REMOVED
                        ? Optional.empty() : ProjectSources.bytes((IFile) resource));
            }
        }
        return true;
    }

    private static boolean collect(IResource resource, Map<String, Optional<byte[]>> changes) {
        if (ProjectSources.isSource(resource)) {
            changes.put(ProjectSources.name(resource), ProjectSources.bytes((IFile) resource));
        }
        return true;
    }
}
