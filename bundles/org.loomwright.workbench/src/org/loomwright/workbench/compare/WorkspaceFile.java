// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.io.ByteArrayInputStream;
import org.eclipse.compare.ResourceNode;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;

/** A file of the workspace as one side of a comparison; what is changed in it is written when the person saves. */
final class WorkspaceFile extends ResourceNode {

    private final IFile file;
    private boolean changed;

    WorkspaceFile(IFile file) {
        super(file);
        this.file = file;
    }

    @Override
    public void setContent(byte[] bytes) {
        changed = true;
        super.setContent(bytes);
    }

    /** Writes what was changed; what was there before is kept in the local history. */
    void commit(IProgressMonitor monitor) throws CoreException {
        if (changed) {
            file.setContents(new ByteArrayInputStream(getContent()), true, true, monitor);
            changed = false;
        }
    }
}
