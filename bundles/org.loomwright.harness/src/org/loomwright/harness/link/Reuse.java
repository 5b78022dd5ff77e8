// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;

/**
 * What can be taken over from an earlier run: what was made of the same object while all that it looks at outside of
 * itself is the same, too. A drawing or harness looks at its platform, the catalogue, the names of all others, the
 * connectors of those that it mates with, and the vehicles of those that it covers.
 */
final class Reuse {

    private final Optional<LinkedProject> before;
    private Optional<Boolean> sameNames = Optional.empty();

    Reuse(Optional<LinkedProject> before) {
        this.before = before;
    }

    /** The parts, if the catalogues are the same, as much was taken from the shelf, and the same could not be read. */
    Optional<Parts> parts(List<Catalogue> catalogues, Set<String> taken, Set<String> damaged) {
        return before.map(LinkedProject::known)
                .filter(known -> same(known.catalogues(), catalogues) && known.taken().equals(taken)
                        && known.parts().damaged().equals(damaged))
                .map(LinkedProject.Known::parts);
    }

    /** The sources that were taken from the shelf, if these names were. */
    Optional<List<Source>> stock(Set<String> taken) {
        return before.filter(each -> each.known().taken().equals(taken)).map(each -> each.project().stock());
    }

    /** A platform is looked at anew, too, when the practice says otherwise of what belongs to it. */
    Optional<Linked<Platform, PlatformView>> platform(Platform platform, Parts parts, List<Practice> practices) {
        return before.filter(each -> each.known().parts() == parts)
                .map(each -> each.platforms().get(platform.name().text()))
                .filter(linked -> linked.element() == platform && linked.view()
                        .filter(view -> view.practice().equals(PracticeView.of(practices, view.name()))).isPresent());
    }

    /**
     * @param wirings all drawings and harnesses as they are now
     * @param views   those that are joined so far
     */
    Optional<Linked<Wiring, WiringView>> wiring(Wiring wiring, PlatformView platform, Map<String, Wiring> wirings,
            Map<String, WiringView> views) {
        return before.filter(each -> sameNames(each, wirings))
                .map(each -> each.linkedWirings().get(wiring.name().text()))
                .filter(linked -> linked.element() == wiring
                        && linked.view().filter(view -> view.platform() == platform).isPresent()
                        && wiring.ours().covers().stream().allMatch(ref -> sameVehicles(ref, views))
                        && wiring.connectors().stream().flatMap(connector -> connector.mates().stream())
                                .map(Fact::value).allMatch(ref -> sameConnectors(ref, wirings)));
    }

    /** Asked once: the names are complete before the first drawing is joined. */
    private boolean sameNames(LinkedProject then, Map<String, Wiring> wirings) {
        if (sameNames.isEmpty()) {
            sameNames = Optional.of(then.sameNames(wirings));
        }
        return sameNames.get();
    }

    private boolean sameVehicles(Ref drawing, Map<String, WiringView> views) {
        WiringView now = views.get(drawing.text());
        WiringView then = before.orElseThrow().project().wirings().get(drawing.text());
        return now == then || now != null && then != null && now.platform() == then.platform()
                && now.when().equals(then.when());
    }

    private boolean sameConnectors(Ref mate, Map<String, Wiring> wirings) {
        Wiring now = wirings.get(mate.owner());
        Wiring then = before.orElseThrow().wirings().get(mate.owner());
        return now == then || now != null && then != null && connectors(now).equals(connectors(then));
    }

    private static List<String> connectors(Wiring wiring) {
        return wiring.connectors().stream().map(each -> each.name().text()).toList();
    }

    /** Whether two lists have the same objects in the same order. */
    static boolean same(List<?> some, List<?> others) {
        boolean same = some.size() == others.size();
        for (int i = 0; same && i < some.size(); i++) {
            same = some.get(i) == others.get(i);
        }
        return same;
    }
}
