// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.harness.Waiver;

/**
 * All sources of a project, joined. Immutable; safe for use by several threads.
 *
 * @param sources   the files, ordered by name
 * @param stock     what is used of the parts that lie ready for every project; none of it is the user's to change
 * @param platforms by name, in order of file and place
 * @param parts     catalogue parts by name, the project's and those of the stock that it uses, with all their facts
 * @param wirings   drawings and harnesses by name, in order of file and place
 * @param kits      by name, in order of file and place
 * @param waivers   in order of file and place
 * @param practices in order of file and place
 * @param problems  what is wrong with the text and its names, ordered by place
 */
public record Project(List<Source> sources, List<Source> stock, Map<String, PlatformView> platforms,
        Map<String, Part> parts, Map<String, WiringView> wirings, Map<String, Kit> kits, List<Waiver> waivers,
        List<Practice> practices, List<Problem> problems) {

    /** Joins sources that use no parts but their own; see {@link #link(List, Shelf)}. */
    public static Project link(List<Source> sources) {
        return link(sources, Shelf.EMPTY);
    }

    /**
     * Joins sources. Never throws for what a person wrote: a name that nothing has is left out and reported. Linear in
     * the size of the sources, but for conditions. The order of {@code sources} does not matter.
     *
     * @param shelf the parts that lie ready; only those are fetched that the sources use and do not state
     */
    public static Project link(List<Source> sources, Shelf shelf) {
        return new Linker(sources, shelf).link();
    }

    /** The drawings, in order. */
    public List<WiringView> drawings() {
        return wirings.values().stream().filter(view -> !view.wiring().isHarness()).toList();
    }

    /** The harnesses of ours, in order. */
    public List<WiringView> harnesses() {
        return wirings.values().stream().filter(view -> view.wiring().isHarness()).toList();
    }

    /** The drawing or harness of that name. */
    public Optional<WiringView> wiring(String name) {
        return Optional.ofNullable(wirings.get(name));
    }

    /** How the project judges what belongs to a drawing, harness, kit or platform of that name. */
    public PracticeView practice(String owner) {
        if (practices.isEmpty()) {
            return PracticeView.NONE;
        }
        return platformOf(owner).map(PlatformView::practice).orElseGet(() -> PracticeView.of(practices, ""));
    }

    private Optional<PlatformView> platformOf(String owner) {
        Optional<PlatformView> direct = wiring(owner).map(WiringView::platform)
                .or(() -> Optional.ofNullable(platforms.get(owner)));
        Kit kit = kits.get(owner);
        if (direct.isPresent() || kit == null) {
            return direct;
        }
        return kit.platform().map(ref -> platforms.get(ref.text()))
                .or(() -> kit.contents().stream().flatMap(content -> wiring(content.item().text()).stream())
                        .map(WiringView::platform).findFirst());
    }

    /** The files, then what is used of the stock: every source that a place may lie in. */
    public List<Source> everySource() {
        return Stream.concat(sources.stream(), stock.stream()).toList();
    }

    /** The text of a source, one of the stock too; empty when there is no such file. */
    public Optional<String> text(String file) {
        return everySource().stream().filter(source -> source.file().equals(file)).map(Source::text).findFirst();
    }
}
