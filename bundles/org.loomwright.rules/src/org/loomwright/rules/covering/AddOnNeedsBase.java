// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * An add-on that needs a revision of its base kit that the project does not have, or that is for vehicles which the
 * base kit is not for. A base kit that does not exist at all is a problem of the text.
 */
public final class AddOnNeedsBase implements Rule<Target.OfProject> {

    private static final RuleInfo INFO = new RuleInfo("add-on-needs-base",
            "Does the project have the kit that each add-on needs?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.PROJECT,
            "the meaning of the language: the kit that an add-on needs must be there first");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfProject> target() {
        return Target.OfProject.class;
    }

    @Override
    public void check(Target.OfProject target, Findings findings) {
        Project project = target.project();
        for (Kit kit : project.kits().values()) {
            kit.needs().ifPresent(need -> Optional.ofNullable(project.kits().get(need.kit().text()))
                    .ifPresent(base -> {
                        revision(kit, need, base, findings);
                        vehicles(project, kit, need, base, findings);
                    }));
        }
    }

    private static void revision(Kit kit, Kit.Need need, Kit base, Findings findings) {
        List<String> known = new ArrayList<>(List.of(base.revision()));
        base.sold().forEach(sold -> known.add(sold.revision()));
        known.removeIf(String::isEmpty);
        boolean there = need.revision().isEmpty() || known.stream().anyMatch(each -> each.equals(need.revision())
                || need.orLater() && order(each, need.revision()) > 0);
        if (!there) {
            findings.about(kit.name().text(), "", "kit " + kit.name()).key("revision")
                    .at(need.span(), "no such revision")
                    .see(base.name().span(), "kit " + base.name())
                    .says("kit " + kit.name() + " needs " + base.name() + " revision " + need.revision()
                            + (need.orLater() ? " or later" : "") + ", and the project knows "
                            + (known.isEmpty() ? "no revision of it" : "revision " + String.join(", ", known)))
                    .advise("name a revision that exists, or say which were sold with: sold revision ...")
                    .report();
        }
    }

    /** Letters alone: A to Z come before AA; everything else as people number things. */
    static int order(String one, String other) {
        boolean letters = one.chars().allMatch(Character::isLetter) && other.chars().allMatch(Character::isLetter);
        return letters && one.length() != other.length() ? Integer.compare(one.length(), other.length())
                : new NaturalOrder().compare(one, other);
    }

    private static void vehicles(Project project, Kit kit, Kit.Need need, Kit base, Findings findings) {
        Optional<PlatformView> platform = platform(project, kit);
        if (platform.isEmpty() || platform(project, base).filter(platform.get()::equals).isEmpty()) {
            return;
        }
        findings.about(kit.name().text(), "", "kit " + kit.name()).key("vehicles")
                .when(sold(project, kit, platform.get()).minus(sold(project, base, platform.get())))
                .at(need.span(), "not for all its vehicles")
                .see(base.name().span(), "kit " + base.name())
                .says("kit " + kit.name() + " is for vehicles that " + base.name() + ", which it needs, is not for")
                .advise("narrow the condition of the add-on, or widen that of the base kit and of what it contains")
                .report();
    }

    private static Optional<PlatformView> platform(Project project, Kit kit) {
        return kit.platform().map(Ref::text).map(name -> project.platforms().get(name))
                .or(() -> harnesses(project, kit).stream().map(WiringView::platform).findFirst());
    }

    private static List<WiringView> harnesses(Project project, Kit kit) {
        return project.harnesses().stream().filter(view -> kit.contents().stream()
                .anyMatch(content -> content.item().text().equals(view.name()))).toList();
    }

    /** The vehicles that a kit is for: its own condition within that of the harnesses in it. */
    private static Condition sold(Project project, Kit kit, PlatformView platform) {
        Condition own = platform.vehicles().resolve(kit.when()).condition();
        List<Condition> harnesses = harnesses(project, kit).stream()
                .filter(view -> view.platform().vehicles() == platform.vehicles()).map(WiringView::when).toList();
        return harnesses.isEmpty() ? own : own.and(platform.vehicles().anyOf(harnesses));
    }
}
