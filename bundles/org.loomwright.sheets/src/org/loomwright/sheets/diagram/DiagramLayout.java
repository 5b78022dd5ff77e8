// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.eclipse.elk.alg.layered.LayeredLayoutProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.WrappingStrategy;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkBendPoint;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkLabel;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;
import org.loomwright.sheets.document.Point;

/**
 * Lays a diagram out in layers from left to right, with wires that run across and down only and labels that lie on
 * nothing, by the layered algorithm of Eclipse ELK (after Sugiyama, Tagawa and Toda 1981). Equal input gives an equal
 * layout. For use by one thread.
 */
public final class DiagramLayout {

    private static final double PIN = 2;

    /** Lays boxes and wires out. */
    public Diagram lay(List<Diagram.Node> nodes, List<Diagram.Edge> edges) {
        return lay(nodes, edges, OptionalDouble.empty());
    }

    /**
     * Lays boxes and wires out, and breaks the row of layers as a text is broken into lines.
     *
     * @param aspect width over height that the whole should have; empty for a single row
     */
    public Diagram lay(List<Diagram.Node> nodes, List<Diagram.Edge> edges, OptionalDouble aspect) {
        synchronized (LayoutMetaDataService.class) {
            LayoutMetaDataService.initElkReflect(); // a register of the library that all threads share
        }
        ElkNode graph = ElkGraphUtil.createGraph();
        graph.setProperty(LayeredOptions.DIRECTION, Direction.RIGHT);
        graph.setProperty(LayeredOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
        graph.setProperty(LayeredOptions.RANDOM_SEED, 1);
        graph.setProperty(LayeredOptions.PADDING, new ElkPadding(3));
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE, 7.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_EDGE, 4.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE, 5.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_LABEL, 1.0);
        graph.setProperty(LayeredOptions.SPACING_LABEL_LABEL, 1.0);
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, 9.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, 4.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_EDGE_BETWEEN_LAYERS, 3.0);
        graph.setProperty(LayeredOptions.SPACING_COMPONENT_COMPONENT, 8.0);
        aspect.ifPresent(wanted -> {
            graph.setProperty(LayeredOptions.WRAPPING_STRATEGY, WrappingStrategy.MULTI_EDGE);
            graph.setProperty(LayeredOptions.ASPECT_RATIO, wanted);
        });
        List<ElkNode> boxes = new ArrayList<>();
        for (Diagram.Node node : nodes) {
            ElkNode box = ElkGraphUtil.createNode(graph);
            box.setDimensions(node.width(), node.height());
            box.setProperty(LayeredOptions.PORT_CONSTRAINTS, PortConstraints.FIXED_SIDE);
            boxes.add(box);
        }
        Map<String, ElkPort> ports = new HashMap<>();
        List<ElkEdge> wires = new ArrayList<>();
        List<ElkLabel> labels = new ArrayList<>();
        for (Diagram.Edge edge : edges) {
            ElkPort from = port(boxes.get(edge.from()), edge.from(), edge.fromPin(), PortSide.EAST, ports);
            ElkPort to = port(boxes.get(edge.to()), edge.to(), edge.toPin(), PortSide.WEST, ports);
            ElkEdge wire = ElkGraphUtil.createSimpleEdge(from, to);
            ElkLabel label = ElkGraphUtil.createLabel("wire", edge.width() > 0 ? wire : null);
            label.setDimensions(edge.width(), edge.height());
            wires.add(wire);
            labels.add(label);
        }
        new LayeredLayoutProvider().layout(graph, new BasicProgressMonitor());
        List<Diagram.Wire> laid = new ArrayList<>();
        for (int i = 0; i < wires.size(); i++) {
            laid.add(new Diagram.Wire(points(wires.get(i)), new Point(labels.get(i).getX(), labels.get(i).getY())));
        }
        return new Diagram(graph.getWidth(), graph.getHeight(), boxes.stream().map(each -> new Diagram.Box(each.getX(),
                each.getY(), each.getWidth(), each.getHeight())).toList(), laid);
    }

    private static ElkPort port(ElkNode box, int index, String pin, PortSide side, Map<String, ElkPort> ports) {
        return ports.computeIfAbsent(index + "\n" + pin + "\n" + side, any -> {
            ElkPort port = ElkGraphUtil.createPort(box);
            port.setDimensions(PIN / 10, PIN);
            port.setProperty(LayeredOptions.PORT_SIDE, side);
            return port;
        });
    }

    private static List<Point> points(ElkEdge wire) {
        List<Point> points = new ArrayList<>();
        for (ElkEdgeSection section : wire.getSections()) {
            points.add(new Point(section.getStartX(), section.getStartY()));
            for (ElkBendPoint bend : section.getBendPoints()) {
                points.add(new Point(bend.getX(), bend.getY()));
            }
            points.add(new Point(section.getEndX(), section.getEndY()));
        }
        return points;
    }
}
