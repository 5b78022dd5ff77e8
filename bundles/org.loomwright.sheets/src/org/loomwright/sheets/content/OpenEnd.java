// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.quantity.ConductorSize;

/**
 * What goes on an end for which sources state no terminal: a ring on a stud, and on a pin of a device what its maker
 * wants.
 */
public final class OpenEnd {

    private OpenEnd() {
    }

    /** Whether the end is on a stud or on a pin of a device, where no terminal is stated. */
    public static boolean is(PieceEnd end) {
        return end.terminal().isEmpty() && (end.node().kind() == Node.Kind.STUD || end.node().kind() == Node.Kind.PIN);
    }

    /** In a word or two, for a narrow column: {@code ring}, {@code to fit}; empty for any other end. */
    public static String brief(PieceEnd end) {
        return !is(end) ? "" : end.node().kind() == Node.Kind.STUD ? "ring" : "to fit";
    }

    /**
     * What to take: {@code ring for the stud, by its thread ring5, ring6 or ring8}; {@code to fit Relay, 40 A}; empty
     * for any other end. A ring is a terminal with a bore; those are named that take the conductor.
     */
    public static String words(LaidHarness harness, Piece piece, PieceEnd end) {
        if (!is(end)) {
            return "";
        }
        if (end.node().kind() == Node.Kind.PIN) {
            List<String> titles = device(harness, end.node()).map(DeviceView::parts).orElse(List.of()).stream()
                    .filter(each -> !each.when().excludes(piece.when())).map(Case::value)
                    .map(each -> each.title().isEmpty() ? each.name().text() : each.title()).distinct().toList();
            return "to fit " + (titles.isEmpty() ? end.title().isEmpty() ? "the pin" : end.title()
                    : String.join(" or ", titles));
        }
        List<String> rings = piece.size().map(size -> rings(harness, size)).orElse(List.of());
        return "ring for the stud" + (rings.isEmpty() ? ", none in the catalogue takes this wire"
                : ", by its thread " + either(rings));
    }

    private static Optional<DeviceView> device(LaidHarness harness, Node node) {
        return Optional.ofNullable(harness.view().devices().get(node.element()))
                .or(() -> Optional.ofNullable(harness.view().platform().devices().get(node.element())));
    }

    private static List<String> rings(LaidHarness harness, ConductorSize size) {
        double area = size.areaMm2() * 1e-6;
        return harness.parts().values().stream().filter(each -> each.kind() == Part.Kind.TERMINAL
                && each.figure(FigureKind.BORE).isPresent() && each.figure(FigureKind.TAKES).filter(takes ->
                takes.from().si() <= area && area <= takes.upTo().orElse(takes.from()).si()).isPresent())
                .map(each -> each.name().text()).sorted(new NaturalOrder()).toList();
    }

    private static String either(List<String> names) {
        List<String> all = new ArrayList<>(names);
        String last = all.removeLast();
        return all.isEmpty() ? last : String.join(", ", all) + " or " + last;
    }
}
