// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;

/**
 * Lays drawings side by side by place and function: connectors by place, mate and name; circuits by what they connect;
 * wires by their ends; branches by the place that they serve. Matching is explained at {@link RowMatcher}. Works in
 * proportion to the number of elements, and the summary of pairs to the square of the number of drawings.
 */
public final class PlaceMatrix implements SideBySide {

    @Override
    public Matrix lay(String name, Project project, List<WiringView> views, Cancel cancel) {
        ConnectorRows connectors = new ConnectorRows(project);
        DeviceRows devices = new DeviceRows();
        PlaceRows places = new PlaceRows();
        for (int i = 0; i < views.size(); i++) {
            cancel.check();
            connectors.add(i, views.get(i));
            devices.add(i, views.get(i));
            places.add(i, views.get(i));
        }
        Ends ends = new Ends();
        RowList ofConnectors = new RowList(views.size());
        RowList ofDevices = new RowList(views.size());
        RowList ofPlaces = new RowList(views.size());
        connectors.write(ofConnectors, ends);
        devices.write(ofDevices, ends);
        places.write(ofPlaces);
        CircuitRows circuits = new CircuitRows(ends);
        for (int i = 0; i < views.size(); i++) {
            cancel.check();
            circuits.add(i, views.get(i));
        }
        RowList ofCircuits = new RowList(views.size());
        circuits.write(ofCircuits);
        List<Row> rows = new ArrayList<>(ofCircuits.rows());
        rows.addAll(ofConnectors.rows());
        rows.addAll(ofDevices.rows());
        rows.addAll(ofPlaces.rows());
        long compared = connectors.compared() + devices.compared() + places.compared() + circuits.compared();
        return new Matrix(name, views.stream().map(view -> column(view.wiring())).toList(), rows,
                new Pairs(rows).all(views.size(), cancel), compared);
    }

    private static Column column(Wiring wiring) {
        String sheets = wiring.sheets().stream().map(sheet -> sheet.issue().isEmpty() ? sheet.number()
                : sheet.number() + " issue " + sheet.issue()).collect(Collectors.joining(", "));
        return new Column(wiring.name().text(), wiring.title(), Stated.words(wiring.when()), sheets);
    }
}
