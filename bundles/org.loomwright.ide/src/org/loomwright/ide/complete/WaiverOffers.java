// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.List;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.rules.Finding;

/** What can be waived in a drawing or harness: what the rule objects to first, then everything with a name. */
final class WaiverOffers {

    private WaiverOffers() {
    }

    static void elements(Asked asked, Offers offers) {
        String target = asked.textBefore("Waiver.target");
        String rule = asked.textBefore("Waiver.rule");
        List<Finding> findings = asked.moment().findings();
        findings.stream().filter(finding -> finding.element().startsWith(target + ":"))
                .forEach(finding -> offers.add(Kind.OTHER, finding.element().substring(target.length() + 1),
                        finding.rule(), finding.sentence(), finding.rule().equals(rule) ? 0 : 1));
        asked.moment().project().wiring(target).ifPresent(view -> {
            view.wires().forEach(wire -> offers.add(Kind.OTHER, wire.label(), "wire", "", 2));
            view.connectors().keySet().forEach(name -> offers.add(Kind.CONNECTOR, name, "connector", "", 2));
            view.splices().keySet().forEach(name -> offers.add(Kind.SPLICE, name, "splice", "", 2));
        });
    }
}
