// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.compare.CompareConfiguration;
import org.eclipse.compare.IResourceProvider;
import org.eclipse.compare.IStreamContentAccessor;
import org.eclipse.compare.ITypedElement;
import org.eclipse.compare.structuremergeviewer.ICompareInput;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.loomwright.app.load.Loader;
import org.loomwright.workbench.guard.OffUi;
import org.loomwright.workbench.truth.ProjectSources;

/**
 * The two sides of a comparison with everything that gives their names a meaning. Where one side is a file of a
 * project, the other files of the project are on both sides; two different files stand alone.
 */
final class Contents {

    private Contents() {
    }

    /** The name under which the compared file is on both sides. */
    static String name(ICompareInput input) {
        return file(input).map(ProjectSources::name).orElse(input.getName());
    }

    static Sides of(ICompareInput input, CompareConfiguration configuration) throws CoreException, IOException {
        OffUi.require("reading both sides");
        byte[] left = bytes(input.getLeft());
        byte[] right = bytes(input.getRight());
        Map<String, byte[]> old = new HashMap<>();
        Map<String, byte[]> now = new HashMap<>();
        String name = name(input);
        if (configuration.getProperty(Sides.KEY) instanceof Sides known) {
            old.putAll(known.old());
            now.putAll(known.now());
        } else {
            Optional<IFile> file = file(input);
            boolean twoFiles = file(input.getLeft()).isPresent() && file(input.getRight()).isPresent()
                    && !file(input.getLeft()).equals(file(input.getRight()));
            if (file.isPresent() && !twoFiles) {
                Map<String, byte[]> all = ProjectSources.of(file.get().getProject());
                old.putAll(all);
                now.putAll(all);
            }
        }
        put(old, name, left);
        put(now, name, right);
        return new Sides(old, now, name);
    }

    private static void put(Map<String, byte[]> files, String name, byte[] bytes) {
        if (bytes == null) {
            files.remove(name);
        } else {
            files.put(name, bytes);
        }
    }

    private static Optional<IFile> file(ICompareInput input) {
        return file(input.getLeft()).or(() -> file(input.getRight()));
    }

    private static Optional<IFile> file(ITypedElement element) {
        IFile file = element instanceof IResourceProvider provider && provider.getResource() instanceof IFile found
                ? found : Adapters.adapt(element, IFile.class);
        return Optional.ofNullable(file).filter(ProjectSources::isSource);
    }

    /** The bytes of a side; null when it has none. */
    private static byte[] bytes(ITypedElement element) throws CoreException, IOException {
        if (!(element instanceof IStreamContentAccessor content)) {
            return null;
        }
        try (InputStream in = content.getContents()) {
            return in == null ? null : in.readNBytes(Loader.LARGEST + 1);
        }
    }
}
