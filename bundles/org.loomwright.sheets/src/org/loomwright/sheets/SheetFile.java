// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.util.Arrays;

/**
 * One file of a set.
 *
 * @param name  its name, without a folder
 * @param pages number of its pages; 0 for one without pages
 * @param bytes its content
 */
public record SheetFile(String name, int pages, byte[] bytes) {

    @Override
    public boolean equals(Object other) {
        return other instanceof SheetFile that && name.equals(that.name) && pages == that.pages
                && Arrays.equals(bytes, that.bytes);
    }

    @Override
    public int hashCode() {
        return name.hashCode() * 31 + Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return name + " (" + bytes.length + " bytes)";
    }
}
