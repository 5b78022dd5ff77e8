// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.IPath;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.IMarkerResolutionGenerator2;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.project.FindingMarkers;

/** Quick fixes: each change that a finding offers, in the editor and in the list of problems. */
public final class LoomFixes implements IMarkerResolutionGenerator2 {

    @Override
    public boolean hasResolutions(IMarker marker) {
        return !fixes(marker).isEmpty();
    }

    @Override
    public IMarkerResolution[] getResolutions(IMarker marker) {
        List<IMarkerResolution> all = new ArrayList<>();
        fixes(marker).forEach(fix -> all.add(resolution(fix)));
        return all.toArray(IMarkerResolution[]::new);
    }

    private static List<Finding.Fix> fixes(IMarker marker) {
        String fingerprint = marker.getAttribute(FindingMarkers.FINGERPRINT, "");
        Optional<Moment> moment = Shared.rooms().room(marker.getResource().getProject()).flatMap(room -> room.last());
        return moment.stream().flatMap(each -> each.findings().stream())
                .filter(finding -> finding.fingerprint().equals(fingerprint)).limit(1)
                .flatMap(finding -> finding.fixes().stream()).filter(fix -> !fix.edits().isEmpty()).toList();
    }

    private static IMarkerResolution resolution(Finding.Fix fix) {
        return new IMarkerResolution() {

            @Override
            public String getLabel() {
                String title = fix.title().isBlank() ? "Mend it" : fix.title();
                return fix.certain() ? title : title + " (a guess; look at it)";
            }

            @Override
            public void run(IMarker marker) {
                IProject project = marker.getResource().getProject();
                IFile file = project.getFile(IPath.fromPortableString(fix.edits().getFirst().span().file()));
                Edits.apply(project, fix.edits(), getLabel() + " in " + file.getName());
            }
        };
    }
}
