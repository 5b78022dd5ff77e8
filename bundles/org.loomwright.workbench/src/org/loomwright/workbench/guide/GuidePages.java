// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.guide;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.URIUtil;
import org.loomwright.workbench.Shared;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;

/** The pages that the build made from the documentation, in the order in which they are read. */
public final class GuidePages {

    private static final String FOLDER = "guide/";

    private GuidePages() {
    }

    /**
     * A page.
     *
     * @param file  its file below the folder of the guide, with {@code /} between folders
     * @param title its title
     */
    public record Page(String file, String title) {
    }

    /** Returns all pages; none when the build made none. */
    public static List<Page> all() {
        URL list = bundle().getEntry(FOLDER + "pages.txt");
        if (list == null) {
            return List.of();
        }
        try (InputStream in = list.openStream()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().map(each -> each.split("\t", 2))
                    .filter(each -> each.length == 2).map(each -> new Page(each[0], each[1])).toList();
        } catch (IOException e) {
            ILog.get().error("the list of the guide's pages cannot be read", e);
            return List.of();
        }
    }

    /** Returns where a page is on disk, beside all that it leads to; empty when the pages cannot be unpacked. */
    public static Optional<URI> location(Page page) {
        try {
            return Optional.of(URIUtil.toURI(FileLocator.toFileURL(bundle().getEntry(FOLDER))).resolve(page.file()));
        } catch (IOException | URISyntaxException e) {
            ILog.get().error("the guide cannot be unpacked", e);
            return Optional.empty();
        }
    }

    private static Bundle bundle() {
        return FrameworkUtil.getBundle(Shared.class);
    }
}
