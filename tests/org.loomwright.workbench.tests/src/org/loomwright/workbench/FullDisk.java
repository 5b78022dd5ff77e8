// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.core.filesystem.IFileInfo;
import org.eclipse.core.filesystem.IFileStore;
import org.eclipse.core.filesystem.provider.FileInfo;
import org.eclipse.core.filesystem.provider.FileStore;
import org.eclipse.core.filesystem.provider.FileSystem;
import org.eclipse.core.runtime.IProgressMonitor;

/** A file system with one file that can be read, and no room for anything else. */
public final class FullDisk extends FileSystem {

    /** Its scheme. */
    static final String SCHEME = "fulldisk";
    /** What its file holds. */
    static final String TEXT = "platform full \"Full\" {\n    place here\n}\n";

    @Override
    public IFileStore getStore(URI uri) {
        return new Store(uri);
    }

    @Override
    public boolean canWrite() {
        return true;
    }

    private static final class Store extends FileStore {

        private final URI uri;

        Store(URI uri) {
            this.uri = uri;
        }

        @Override
        public String[] childNames(int options, IProgressMonitor monitor) {
            return EMPTY_STRING_ARRAY;
        }

        @Override
        public IFileInfo fetchInfo(int options, IProgressMonitor monitor) {
            FileInfo info = new FileInfo(getName());
            info.setExists(true);
            info.setLength(TEXT.length());
            info.setLastModified(1_000_000);
            info.setAttribute(EFS.ATTRIBUTE_READ_ONLY, false);
            return info;
        }

        @Override
        public IFileStore getChild(String name) {
            return new Store(URI.create(uri + "/" + name));
        }

        @Override
        public String getName() {
            return "full.loom";
        }

        @Override
        public IFileStore getParent() {
            return null;
        }

        @Override
        public InputStream openInputStream(int options, IProgressMonitor monitor) {
            return new ByteArrayInputStream(TEXT.getBytes(StandardCharsets.UTF_8));
        }

        @Override
        public OutputStream openOutputStream(int options, IProgressMonitor monitor) {
            return new OutputStream() {

                @Override
                public void write(int each) throws IOException {
                    throw new IOException("No space left on device");
                }
            };
        }

        @Override
        public URI toURI() {
            return uri;
        }
    }
}
