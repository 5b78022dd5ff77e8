// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.IPath;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.IMarkerResolutionGenerator2;
import org.loomwright.ide.Services;
import org.loomwright.ide.act.Action;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.project.FindingMarkers;
import org.loomwright.workbench.truth.ProjectRoom;

/** Quick fixes: what can be done about a finding, in the editor and in the list of problems. */
public final class LoomFixes implements IMarkerResolutionGenerator2 {

    @Override
    public boolean hasResolutions(IMarker marker) {
        return !actions(marker).isEmpty();
    }

    @Override
    public IMarkerResolution[] getResolutions(IMarker marker) {
        return actions(marker).stream().map(LoomFixes::resolution).toArray(IMarkerResolution[]::new);
    }

    private static List<Action> actions(IMarker marker) {
        Optional<Moment> moment = moment(marker);
        return finding(marker, moment).map(finding -> Services.actions(moment.get(), finding)).orElse(List.of());
    }

    private static Optional<Moment> moment(IMarker marker) {
        return Shared.rooms().room(marker.getResource().getProject()).flatMap(ProjectRoom::last);
    }

    private static Optional<Finding> finding(IMarker marker, Optional<Moment> moment) {
        String fingerprint = marker.getAttribute(FindingMarkers.FINGERPRINT, "");
        return moment.stream().flatMap(each -> each.findings().stream())
                .filter(each -> each.fingerprint().equals(fingerprint)).findFirst();
    }

    private static IMarkerResolution resolution(Action action) {
        return new IMarkerResolution() {

            @Override
            public String getLabel() {
                String title = Character.toUpperCase(action.title().charAt(0)) + action.title().substring(1);
                return action.certain() || action.accepts() ? title : title + " (a guess; look at it)";
            }

            @Override
            public void run(IMarker marker) {
                IProject project = marker.getResource().getProject();
                IFile file = project.getFile(IPath.fromPortableString(action.edits().getFirst().span().file()));
                Edits.apply(project, action.edits(), getLabel() + " in " + file.getName());
            }
        };
    }
}
