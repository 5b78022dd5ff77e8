// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.truth;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.loomwright.app.load.Loader;
import org.loomwright.app.load.ProjectFiles;
import org.loomwright.workbench.guard.OffUi;

/** The sources of a project in the workspace: text that is being edited where there is some, else the files. */
public final class ProjectSources {

    private ProjectSources() {
    }

    /** Returns whether a resource is a source of its project; what a name with a dot in front hides is none. */
    public static boolean isSource(IResource resource) {
        if (!(resource instanceof IFile) || !resource.getName().endsWith(ProjectFiles.ENDING)) {
            return false;
        }
        for (String folder : resource.getProjectRelativePath().segments()) {
            if (folder.startsWith(".")) {
                return false;
            }
        }
        return true;
    }

    /** Returns the name by which the rooms know a file: its path within the project. */
    public static String name(IResource file) {
        return file.getProjectRelativePath().toString();
    }

    /** Returns the bytes of all sources, by name. A file that cannot be read is left out and logged. */
    public static Map<String, byte[]> of(IProject project) {
        OffUi.require("reading files");
        Map<String, byte[]> found = new TreeMap<>();
        try {
            project.accept(resource -> {
                if (resource.getName().startsWith(".") && resource.getType() == IResource.FOLDER) {
                    return false;
                }
                if (isSource(resource)) {
                    bytes((IFile) resource).ifPresent(bytes -> found.put(name(resource), bytes));
                }
                return true;
            });
        } catch (CoreException e) {
            ILog.get().warn("the files of " + project.getName() + " could not be listed", e);
        }
        return found;
    }

    /** Returns the current bytes of a file: as edited, else as saved; empty when it is gone or cannot be read. */
    public static Optional<byte[]> bytes(IFile file) {
        ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(file.getFullPath(),
                LocationKind.IFILE);
        if (buffer != null && buffer.isDirty()) {
            return Optional.of(buffer.getDocument().get().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
        try (InputStream in = file.getContents(true)) {
            return Optional.of(in.readNBytes(Loader.LARGEST + 1));
        } catch (CoreException | IOException e) {
            if (file.exists()) {
                ILog.get().warn(file.getFullPath() + " cannot be read", e);
            }
            return Optional.empty();
        }
    }

}
