// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.SubMonitor;
import org.loomwright.workbench.Shared;
import org.osgi.framework.FrameworkUtil;

/** Makes projects of the workspace. */
public final class ProjectMaker {

    private static final String FIRST = """
            // A family of vehicles that share a shell and most of their wiring. Give it a name of yours.
            platform myCar "My car" {
                supply 12 V negative ground
                years 1964 .. 1967

                group body of saloon, coupe
                option heater "Heater"

                zone engineBay "Engine bay" ambient 80 C wet
                zone cabin "Cabin" ambient 50 C dry

                place bulkhead "Bulkhead, cabin side" in cabin
                place headlampLeft "Left headlamp" in engineBay

                position front "Front wiring"

                ground body "Body shell"
            }
            """;

    private ProjectMaker() {
    }

    /**
     * Makes a project with our nature.
     *
     * @param project  its handle; must not exist
     * @param location where its folder is; null for the workspace
     * @return the file to be opened first; null when there is none
     */
    public static IFile make(IProject project, URI location, ProjectContent content, IProgressMonitor monitor)
            throws CoreException {
        SubMonitor steps = SubMonitor.convert(monitor, "Making " + project.getName(), 100);
        IProjectDescription description = ResourcesPlugin.getWorkspace().newProjectDescription(project.getName());
        description.setLocationURI(location);
        project.create(description, steps.split(10));
        project.open(steps.split(10));
        project.setDefaultCharset(StandardCharsets.UTF_8.name(), steps.split(5));
        IFile first = switch (content) {
            case PLATFORM -> write(project, "platform.loom", FIRST);
            case ORRIN -> example(project, "orrin", "front-harness.loom", steps.split(60));
            case NOTHING -> null;
        };
        IProjectDescription ours = project.getDescription();
        ours.setNatureIds(new String[] {LoomNature.ID});
        project.setDescription(ours, steps.split(15));
        return first;
    }

    private static IFile write(IProject project, String name, String text) throws CoreException {
        IFile file = project.getFile(name);
        if (!file.exists()) {
            file.create(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), true, null);
        }
        return file;
    }

    /** Copies an example that is shipped; what the folder holds already stays as it is. */
    private static IFile example(IProject project, String name, String first, IProgressMonitor monitor)
            throws CoreException {
        var found = FrameworkUtil.getBundle(ProjectMaker.class).findEntries("examples/" + name, "*.loom", false);
        List<URL> files = found == null ? List.of() : Collections.list(found);
        if (files.isEmpty()) {
            throw new CoreException(Status.error("the example " + name + " is missing from " + Shared.ID));
        }
        SubMonitor steps = SubMonitor.convert(monitor, files.size());
        for (URL each : files) {
            IFile file = project.getFile(each.getPath().substring(each.getPath().lastIndexOf('/') + 1));
            try (InputStream in = each.openStream()) {
                if (!file.exists()) {
                    file.create(in, true, steps.split(1));
                }
            } catch (IOException e) {
                throw new CoreException(Status.error("the example " + name + " cannot be read", e));
            }
        }
        return project.getFile(first);
    }
}
