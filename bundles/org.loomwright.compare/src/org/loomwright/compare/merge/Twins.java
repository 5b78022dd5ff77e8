// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.merge;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.loomwright.compare.merge.Pairs.Side;

/** Finds for each line of any version what it is in the others, and where it goes. Linear in the versions. */
final class Twins {

    private final Pairs toOurs;
    private final Pairs toTheirs;
    private final Pairs added = new Pairs();
    private final List<Twin> all = new ArrayList<>();

    private Twins(Pairs toOurs, Pairs toTheirs) {
        this.toOurs = toOurs;
        this.toTheirs = toTheirs;
    }

    /** The file, with all that the result has in it. */
    static Twin of(Side base, Side ours, Side theirs, Pairs toOurs, Pairs toTheirs) {
        Twins twins = new Twins(toOurs, toTheirs);
        twins.fromBase(base.file());
        twins.addedByBoth();
        twins.rest(ours.file(), true);
        twins.rest(theirs.file(), false);
        twins.all.forEach(twins::place);
        twins.all.forEach(twins::order);
        return base.file().twin;
    }

    private void fromBase(TextNode node) {
        put(new Twin(node, toOurs.partner(node), toTheirs.partner(node)));
        node.children.forEach(this::fromBase);
    }

    private Twin put(Twin twin) {
        all.add(twin);
        for (TextNode each : new TextNode[] {twin.base, twin.ours, twin.theirs}) {
            if (each != null) {
                each.twin = twin;
            }
        }
        return twin;
    }

    private void addedByBoth() {
        Deque<Twin> open = new ArrayDeque<>(all.stream().filter(Twin::isOnBothSides).toList());
        while (!open.isEmpty()) {
            Twin twin = open.poll();
            Pairs.added(twin.ours, twin.theirs, toOurs, toTheirs, added);
            for (TextNode child : twin.ours.children) {
                if (added.partner(child) != null && child.twin == null) {
                    open.add(put(new Twin(null, child, added.partner(child))));
                }
            }
        }
    }

    private void rest(TextNode node, boolean isOurs) {
        if (node.twin == null) {
            put(isOurs ? new Twin(null, node, null) : new Twin(null, null, node));
        }
        node.children.forEach(child -> rest(child, isOurs));
    }

    private void place(Twin twin) {
        if (twin.any().isFile() || !isKept(twin)) {
            return;
        }
        Twin home = twin.any().parent.twin;
        if (twin.isOnBothSides()) {
            Twin right = twin.theirs.parent.twin;
            boolean stays = twin.base != null && twin.base.parent.twin == home;
            home = stays ? right : home;
        }
        twin.home = home;
    }

    private boolean isKept(Twin twin) {
        if (twin.base == null || twin.isOnBothSides()) {
            return true;
        }
        twin.isTorn = twin.ours != null ? isChanged(twin.base, twin.ours, toOurs)
                : twin.theirs != null && isChanged(twin.base, twin.theirs, toTheirs);
        return twin.isTorn;
    }

    /** Whether a side changed a line or what is in its block, or put something there. */
    private static boolean isChanged(TextNode base, TextNode side, Pairs pairs) {
        if (!base.head.words().equals(side.head.words())) {
            return true;
        }
        for (TextNode child : side.children) {
            TextNode origin = pairs.origin(child);
            if (origin == null || origin.parent != base || isChanged(origin, child, pairs)) {
                return true;
            }
        }
        return false;
    }

    private void order(Twin twin) {
        twin.children = Order.merge(in(twin, twin.base), in(twin, twin.ours), in(twin, twin.theirs));
        if (twin.ours == null && twin.theirs == null) {
            twin.children = List.of();
        }
    }

    private List<Twin> in(Twin home, TextNode node) {
        return node == null ? List.of() : node.children.stream().map(each -> each.twin)
                .filter(each -> each.home == home).toList();
    }
}
