// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;
import org.loomwright.workbench.Shared;
import org.loomwright.workbench.truth.Truth;

/** Findings as markers of the workspace. Findings that do not count (inherited, accepted) are not marked. */
public final class FindingMarkers {

    /** Type of the markers. */
    public static final String TYPE = Shared.ID + ".finding";

    /** Attribute: the id of the rule. */
    public static final String RULE = "rule";

    /** Attribute: the fingerprint of the finding. */
    public static final String FINGERPRINT = "fingerprint";

    private static final String DIGEST = "digest";

    private FindingMarkers() {
    }

    /**
     * Sets the markers of a project.
     *
     * @param all true to set those of every file, false to leave those alone that would be the same
     */
    static void set(IProject project, Truth truth, boolean all) throws CoreException {
        Map<String, List<Finding>> wanted = new HashMap<>();
        truth.report().counting().forEach(finding ->
                wanted.computeIfAbsent(finding.place().span().file(), any -> new ArrayList<>()).add(finding));
        Map<String, List<IMarker>> present = new HashMap<>();
        for (IMarker marker : project.findMarkers(TYPE, true, IResource.DEPTH_INFINITE)) {
            present.computeIfAbsent(marker.getResource().getProjectRelativePath().toString(),
                    any -> new ArrayList<>()).add(marker);
        }
        TreeSet<String> files = new TreeSet<>(wanted.keySet());
        files.addAll(present.keySet());
        for (String file : files) {
            IResource resource = resource(project, file);
            List<Finding> findings = wanted.getOrDefault(file, List.of());
            List<IMarker> markers = present.getOrDefault(file, List.of());
            if (all || !digests(findings).equals(digestsOf(markers))) {
                for (IMarker marker : markers) {
                    marker.delete();
                }
                for (Finding finding : findings) {
                    resource.createMarker(TYPE, attributes(finding));
                }
            }
        }
    }

    /** The file of a finding; the project for one that lies in no file of it. */
    private static IResource resource(IProject project, String file) {
        if (file.isEmpty()) {
            return project;
        }
        IFile found = project.getFile(IPath.fromPortableString(file));
        return found.exists() ? found : project;
    }

    private static Map<String, Object> attributes(Finding finding) {
        Span span = finding.place().span();
        Map<String, Object> attributes = new HashMap<>();
        attributes.put(IMarker.MESSAGE, message(finding));
        attributes.put(IMarker.SEVERITY, severity(finding.severity()));
        attributes.put(IMarker.LINE_NUMBER, Math.max(1, span.line()));
        attributes.put(IMarker.CHAR_START, span.offset());
        attributes.put(IMarker.CHAR_END, span.end());
        attributes.put(IMarker.LOCATION, finding.subject());
        attributes.put(RULE, finding.rule());
        attributes.put(FINGERPRINT, finding.fingerprint());
        attributes.put(DIGEST, digest(finding));
        return attributes;
    }

    /** The sentence of a finding with its vehicles: {@code ... (12 of 43,920 vehicles)}. */
    public static String message(Finding finding) {
        return finding.sentence() + finding.affected().filter(each -> !each.every())
                .map(each -> " (" + each.words() + ": " + each.tally() + ")").orElse("");
    }

    private static int severity(Severity severity) {
        return switch (severity) {
            case ERROR -> IMarker.SEVERITY_ERROR;
            case WARNING -> IMarker.SEVERITY_WARNING;
            case NOTE -> IMarker.SEVERITY_INFO;
        };
    }

    private static String digest(Finding finding) {
        Span span = finding.place().span();
        return finding.fingerprint() + " " + span.offset() + " " + span.length() + " " + message(finding).hashCode()
                + " " + finding.severity();
    }

    private static TreeSet<String> digests(List<Finding> findings) {
        TreeSet<String> digests = new TreeSet<>();
        findings.forEach(finding -> digests.add(digest(finding)));
        return digests;
    }

    private static TreeSet<String> digestsOf(List<IMarker> markers) {
        TreeSet<String> digests = new TreeSet<>();
        markers.forEach(marker -> digests.add(marker.getAttribute(DIGEST, "")));
        return digests;
    }
}
