// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Gate;
import org.loomwright.electric.network.Junction;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;

/**
 * A network in one mode, cut at stiff junctions: the poles of batteries, the ends of straps and, where that leaves a
 * block that depends on many conditions, the junctions at which its feed fans out. What lies between several stiff
 * junctions of the feed, and every source, is the core; what hangs from one of them is a block. A relay keeps its coil
 * and its contacts together. Blocks meet nowhere but at stiff junctions, so that each feels the others by the currents
 * that they draw there alone.
 *
 * @param core    pieces of the core, in order
 * @param blocks  the pieces of each block, in order
 * @param feeds   the stiff junctions that a battery feeds
 * @param grounds the stiff junctions on the other side, the reference among them
 */
public record Blocks(List<Piece> core, List<List<Piece>> blocks, Set<Junction> feeds, Set<Junction> grounds) {

    /** A block that depends on no more conditions than this is not cut further. */
    static final int FEW = 4;

    public Blocks {
        core = List.copyOf(core);
        blocks = blocks.stream().map(List::copyOf).toList();
        feeds = Set.copyOf(feeds);
        grounds = Set.copyOf(grounds);
    }

    /** Cuts what is live in a mode. Grows with the pieces times the junctions at which three or more of them meet. */
    public static Blocks of(Schematic schematic, Mode mode) {
        Cutter cutter = new Cutter(schematic, Live.conducting(schematic, mode));
        BitSet stiff = cutter.poles();
        Cut best = cutter.cut(stiff);
        for (boolean better = best.widest() > FEW; better;) {
            better = false;
            BitSet coarse = stiff;
            for (int junction : cutter.fans(coarse)) {
                BitSet finer = (BitSet) coarse.clone();
                finer.set(junction);
                Cut cut = cutter.cut(finer);
                if (cut.isLighterThan(best)) {
                    best = cut;
                    stiff = finer;
                    better = best.widest() > FEW;
                }
            }
        }
        return best.blocks();
    }

    /** A way to cut, with the number of conditions of the widest block and how many blocks are that wide. */
    private record Cut(Blocks blocks, int widest, long wide) {
        boolean isLighterThan(Cut other) {
            return widest < other.widest || widest == other.widest && wide < other.wide;
        }
    }

    /** Cuts one network at various junctions. */
    private static final class Cutter {

        private final Schematic schematic;
        private final List<Piece> live;
        private final BitSet ground = new BitSet();
        private final BitSet hard = new BitSet();

        Cutter(Schematic schematic, List<Piece> live) {
            this.schematic = schematic;
            this.live = live;
            ground.set(0);
            for (Piece piece : live) {
                if (piece.role() == Role.STRAP) {
                    ground.set(schematic.from(piece));
                }
                if (piece.role() == Role.STRAP || piece.role() == Role.BATTERY) {
                    ground.set(schematic.to(piece));
                }
            }
            reach();
        }

        /** The junctions to which a source leads without the contact of a relay, which may be open, or a load. */
        private void reach() {
            live.stream().filter(each -> each.role() == Role.BATTERY || each.role() == Role.MACHINE)
                    .forEach(each -> hard.set(schematic.from(each)));
            for (int before = -1; before < hard.cardinality();) {
                before = hard.cardinality();
                for (Piece piece : live) {
                    int from = schematic.from(piece);
                    int to = schematic.to(piece);
                    boolean closed = piece.role().passes() && !(piece.gate() instanceof Gate.While state
                            && state.relay());
                    if (closed && !ground.get(from) && !ground.get(to) && (hard.get(from) || hard.get(to))) {
                        hard.set(from);
                        hard.set(to);
                    }
                }
            }
        }

        BitSet poles() {
            BitSet poles = (BitSet) ground.clone();
            live.stream().filter(each -> each.role() == Role.BATTERY).forEach(each -> poles.set(schematic.from(each)));
            return poles;
        }

        /** Junctions, not stiff yet, to which a source leads and at which three or more pieces meet. */
        List<Integer> fans(BitSet stiff) {
            int[] ends = new int[schematic.junctions().size()];
            for (Piece piece : live) {
                ends[schematic.from(piece)]++;
                ends[schematic.to(piece)]++;
            }
            List<Integer> fans = new ArrayList<>();
            for (int i = 0; i < ends.length; i++) {
                if (ends[i] > 2 && hard.get(i) && !stiff.get(i)) {
                    fans.add(i);
                }
            }
            return fans;
        }

        Cut cut(BitSet stiff) {
            int[] group = groups(stiff);
            Map<Integer, List<Piece>> pieces = new TreeMap<>();
            Map<Integer, BitSet> feeds = new HashMap<>();
            Map<Integer, BitSet> grounds = new HashMap<>();
            BitSet sources = new BitSet();
            for (int i = 0; i < group.length; i++) {
                int root = find(group, i);
                Piece piece = live.get(i);
                pieces.computeIfAbsent(root, key -> new ArrayList<>()).add(piece);
                for (int end : new int[] {schematic.from(piece), schematic.to(piece)}) {
                    if (stiff.get(end)) {
                        (ground.get(end) ? grounds : feeds).computeIfAbsent(root, key -> new BitSet()).set(end);
                    }
                }
                if (piece.role() == Role.BATTERY || piece.role() == Role.MACHINE || piece.role() == Role.STRAP) {
                    sources.set(root);
                }
            }
            BitSet reached = reached(feeds, sources);
            BitSet unfed = (BitSet) stiff.clone();
            unfed.andNot(ground);
            unfed.andNot(reached);
            if (!unfed.isEmpty()) { // no source reaches it: what meets there stays together
                BitSet fewer = (BitSet) stiff.clone();
                fewer.andNot(unfed);
                return cut(fewer);
            }
            BitSet core = new BitSet();
            List<List<Piece>> blocks = new ArrayList<>();
            BitSet shared = new BitSet();
            pieces.forEach((root, list) -> {
                int fed = feeds.getOrDefault(root, new BitSet()).cardinality();
                boolean joins = fed > 1 || fed == 0 && grounds.getOrDefault(root, new BitSet()).cardinality() > 1
                        && list.stream().allMatch(each -> each.role().passes());
                if (sources.get(root) || joins) {
                    list.forEach(each -> {
                        core.set(each.index());
                        shared.set(schematic.conditionOf(each));
                    });
                } else {
                    blocks.add(list);
                }
            });
            int widest = shared.cardinality();
            long wide = 1;
            for (List<Piece> block : blocks) {
                BitSet conditions = (BitSet) shared.clone();
                block.forEach(each -> conditions.set(schematic.conditionOf(each)));
                int width = conditions.cardinality();
                wide = width > widest ? 1 : width == widest ? wide + 1 : wide;
                widest = Math.max(widest, width);
            }
            BitSet feeding = (BitSet) stiff.clone();
            feeding.andNot(ground);
            return new Cut(new Blocks(live.stream().filter(each -> core.get(each.index())).toList(), blocks,
                    junctions(feeding), junctions(ground)), widest, wide);
        }

        /** The stiff junctions of the feed to which sources lead, be it through others. */
        private static BitSet reached(Map<Integer, BitSet> feeds, BitSet sources) {
            BitSet reached = new BitSet();
            sources.stream().mapToObj(feeds::get).filter(Objects::nonNull).forEach(reached::or);
            for (int before = -1; before < reached.cardinality();) {
                before = reached.cardinality();
                feeds.values().stream().filter(each -> each.intersects(reached)).forEach(reached::or);
            }
            return reached;
        }

        private Set<Junction> junctions(BitSet places) {
            return places.stream().mapToObj(schematic.junctions()::get).collect(Collectors.toSet());
        }

        private int[] groups(BitSet stiff) {
            int[] group = new int[live.size()];
            Arrays.setAll(group, i -> i);
            int[] first = new int[schematic.junctions().size()];
            Arrays.fill(first, -1);
            Map<String, Integer> relays = new HashMap<>();
            for (int i = 0; i < group.length; i++) {
                int place = i;
                Piece piece = live.get(i);
                for (int end : new int[] {schematic.from(piece), schematic.to(piece)}) {
                    if (!stiff.get(end)) {
                        first[end] = first[end] < 0 ? i : first[end];
                        group[find(group, i)] = find(group, first[end]);
                    }
                }
                Integer other = relay(piece).map(relay -> relays.putIfAbsent(relay, place)).orElse(null);
                if (other != null) {
                    group[find(group, i)] = find(group, other);
                }
            }
            return group;
        }

        /** The relay whose coil or contact a piece is. */
        private static Optional<String> relay(Piece piece) {
            if (piece.role() == Role.COIL) {
                return Optional.of(piece.subject().owner() + ":" + piece.subject().element());
            }
            return piece.gate() instanceof Gate.While state && state.relay()
                    ? Optional.of(state.owner() + ":" + state.device()) : Optional.empty();
        }

        private static int find(int[] group, int start) {
            int place = start;
            while (group[place] != place) {
                group[place] = group[group[place]];
                place = group[place];
            }
            return place;
        }
    }
}
