// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import org.eclipse.compare.IEncodedStreamContentAccessor;
import org.eclipse.compare.ITypedElement;
import org.eclipse.swt.graphics.Image;

/** A file as it was at a revision; it cannot be changed. */
record Snapshot(String name, byte[] bytes) implements ITypedElement, IEncodedStreamContentAccessor {

    @Override
    public String getName() {
        return name;
    }

    @Override
    public Image getImage() {
        return null;
    }

    @Override
    public String getType() {
        return "loom";
    }

    @Override
    public InputStream getContents() {
        return new ByteArrayInputStream(bytes);
    }

    @Override
    public String getCharset() {
        return "UTF-8";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ITypedElement element && element.getName().equals(name);
    }

    @Override
    public int hashCode() {
        return name.hashCode();
    }
}
