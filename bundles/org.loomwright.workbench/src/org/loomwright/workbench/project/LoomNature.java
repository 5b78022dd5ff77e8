// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.util.Arrays;
import java.util.stream.Stream;
import org.eclipse.core.resources.ICommand;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IProjectNature;
import org.eclipse.core.runtime.CoreException;
import org.loomwright.workbench.Shared;

/** Marks a project of the workspace as one of ours: it has the builder. */
public final class LoomNature implements IProjectNature {

    /** Id of the nature. */
    public static final String ID = Shared.ID + ".nature";

    private IProject project;

    @Override
    public void configure() throws CoreException {
        IProjectDescription description = project.getDescription();
        ICommand[] commands = description.getBuildSpec();
        if (Arrays.stream(commands).noneMatch(each -> each.getBuilderName().equals(LoomBuilder.ID))) {
            ICommand ours = description.newCommand();
            ours.setBuilderName(LoomBuilder.ID);
            description.setBuildSpec(Stream.concat(Arrays.stream(commands), Stream.of(ours)).toArray(ICommand[]::new));
            project.setDescription(description, null);
        }
    }

    @Override
    public void deconfigure() throws CoreException {
        IProjectDescription description = project.getDescription();
        description.setBuildSpec(Arrays.stream(description.getBuildSpec())
                .filter(each -> !each.getBuilderName().equals(LoomBuilder.ID)).toArray(ICommand[]::new));
        project.setDescription(description, null);
        project.deleteMarkers(FindingMarkers.TYPE, true, org.eclipse.core.resources.IResource.DEPTH_INFINITE);
    }

    @Override
    public IProject getProject() {
        return project;
    }

    @Override
    public void setProject(IProject project) {
        this.project = project;
    }
}
