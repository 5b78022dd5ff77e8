// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import org.loomwright.harness.Source;

/** Reads one source, wherever it comes from: a file, a version-control blob, an editor's buffer. */
public interface SourceReader {

    /**
     * Reads a source by itself; names of other files stay text. Whatever is wrong with it is among the problems of the
     * result, never an exception, and what can be read around it is in the elements.
     *
     * @param file the name of the source, which all spans repeat
     * @param bytes its content, UTF-8
     */
    Source read(String file, byte[] bytes);
}
