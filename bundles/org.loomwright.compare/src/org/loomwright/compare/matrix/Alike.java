// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.List;
import java.util.Map;
import org.loomwright.harness.Device;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * Which elements of several drawings are the same thing, told as in the {@link Matrix}. Each row has at most one
 * element of each column.
 *
 * @param connectors their names by column
 * @param studs      their names by column
 * @param devices    in-line devices by column
 * @param circuits   circuits with their wires
 */
public record Alike(List<Map<Integer, String>> connectors, List<Map<Integer, String>> studs,
        List<Map<Integer, Device>> devices, List<AlikeCircuits> circuits) {

    /** Matches the elements of some drawings, in the order of the columns; grows with the number of elements. */
    public static Alike of(Project project, List<WiringView> views, Cancel cancel) {
        ConnectorRows connectors = new ConnectorRows(project);
        DeviceRows devices = new DeviceRows();
        for (int i = 0; i < views.size(); i++) {
            cancel.check();
            connectors.add(i, views.get(i));
            devices.add(i, views.get(i));
        }
        Ends ends = new Ends();
        connectors.write(new RowList(views.size()), ends);
        devices.write(new RowList(views.size()), ends);
        CircuitRows circuits = new CircuitRows(ends);
        for (int i = 0; i < views.size(); i++) {
            cancel.check();
            circuits.add(i, views.get(i));
        }
        return new Alike(connectors.names(false), connectors.names(true), devices.elements(), circuits.elements());
    }
}
