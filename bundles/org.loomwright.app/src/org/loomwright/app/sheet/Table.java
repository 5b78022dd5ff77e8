// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.util.List;

/**
 * A list of the bench.
 *
 * @param name    the name of its file, without folder
 * @param headers one for each column, with the unit where there is one
 * @param rows    as many cells as there are headers in each; a cell is empty where nothing is known
 */
public record Table(String name, List<String> headers, List<List<String>> rows) {

    public Table {
        headers = List.copyOf(headers);
        rows = List.copyOf(rows);
    }
}
