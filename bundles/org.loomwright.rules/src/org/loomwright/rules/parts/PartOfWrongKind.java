// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Spelling;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A reference to a catalogue part of a kind that cannot serve where it is named: a housing for a cable. */
public final class PartOfWrongKind implements Rule<Target.OfProject> {

    private static final RuleInfo INFO = new RuleInfo("part-of-wrong-kind",
            "Can each part serve where it is named?", Severity.ERROR, Kind.TRANSCRIPTION, Scope.PROJECT,
            "the meaning of the language: each keyword names a part of its kind");

    private static final Set<Part.Kind> CABLES = kinds(Part.Kind.CABLE, Part.Kind.FUSIBLE_LINK,
            Part.Kind.RESISTOR_CABLE);
    private static final Set<Part.Kind> HOUSINGS = kinds(Part.Kind.HOUSING, Part.Kind.ASSEMBLY);
    private static final Set<Part.Kind> DEVICES = kinds(Part.Kind.FUSE, Part.Kind.BREAKER, Part.Kind.RELAY,
            Part.Kind.FLASHER, Part.Kind.LAMP, Part.Kind.MOTOR, Part.Kind.LOAD, Part.Kind.SWITCH, Part.Kind.SOURCE,
            Part.Kind.ASSEMBLY, Part.Kind.FUSIBLE_LINK, Part.Kind.RESISTOR_CABLE);
    private static final Set<Part.Kind> PLACED = kinds(Part.Kind.COVERING, Part.Kind.OPENING, Part.Kind.CLIP,
            Part.Kind.SPLICE_METHOD, Part.Kind.SEAL, Part.Kind.PLUG, Part.Kind.HOUSING, Part.Kind.ASSEMBLY);

    /** In the order of the language, whatever the machine. */
    private static Set<Part.Kind> kinds(Part.Kind first, Part.Kind... others) {
        return Collections.unmodifiableSet(EnumSet.of(first, others));
    }

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
        for (PlatformView platform : project.platforms().values()) {
            platform.devices().values()
                    .forEach(device -> device(new Search(project.parts(), platform, findings), device));
        }
        for (WiringView view : project.wirings().values()) {
            findings.checkCancelled();
            wiring(new Search(project.parts(), view.platform(), findings), view);
        }
        for (Kit kit : project.kits().values()) {
            kit(target, kit, findings);
        }
    }

    private static void wiring(Search search, WiringView view) {
        view.devices().values().forEach(device -> device(search, device));
        for (ConnectorView connector : view.connectors().values()) {
            String words = "connector " + connector.name();
            for (Fact<Ref> fact : connector.connector().housing()) {
                search.ask(view.name(), connector.name(), words, "a connector", fact.value(), fact.when(),
                        connector.when(), HOUSINGS);
            }
            for (Connector.CavityFact fact : connector.connector().cavities()) {
                sort(fact.kind()).ifPresent(kind -> search.ask(view.name(), connector.name(), words,
                        "the " + kind(kind) + " of cavity " + fact.cavity(), fact.value(), fact.when(),
                        connector.when(), kinds(kind)));
            }
        }
        for (WireView wire : view.wires()) {
            for (Fact<Ref> fact : wire.wire().cables()) {
                search.ask(view.name(), wire.label(), "wire " + wire.label(), "the cable of a wire", fact.value(),
                        fact.when(), wire.when(), CABLES);
            }
        }
        for (Fact<Ref> fact : view.wiring().defaults().cable()) {
            search.ask(view.name(), "", (view.wiring().isHarness() ? "harness " : "drawing ") + view.name(),
                    "the cable of its wires", fact.value(), fact.when(), view.when(), CABLES);
        }
        for (WiringView.SpliceView splice : view.splices().values()) {
            String name = splice.splice().name().text();
            splice.splice().method().ifPresent(ref -> search.ask(view.name(), name, "splice " + name,
                    "the method of a splice", ref, new Expression.Always(), splice.when(),
                    kinds(Part.Kind.SPLICE_METHOD)));
        }
        for (Wiring.Placed placed : view.wiring().placed()) {
            search.ask(view.name(), placed.name().text(), "part " + placed.name(), "something fitted to a run",
                    placed.part(), placed.when(), view.when(), PLACED);
        }
    }

    private static void device(Search search, DeviceView device) {
        for (Fact<Ref> fact : device.device().part()) {
            search.ask(device.owner(), device.name(), "device " + device.name(), "a device", fact.value(), fact.when(),
                    device.when(), DEVICES);
        }
    }

    private static void kit(Target.OfProject target, Kit kit, Findings findings) {
        for (Kit.Content content : kit.contents()) {
            Part part = target.project().parts().get(content.item().text());
            if (part != null && !target.project().wirings().containsKey(content.item().text())
                    && part.kind() == Part.Kind.COLOUR) {
                draft(findings, kit.name().text(), part.name().text(), "content " + part.name(), "content of a kit",
                        content.item(), part).report();
            }
        }
    }

    private static Optional<Part.Kind> sort(Connector.CavityKind kind) {
        return switch (kind) {
            case MAP -> Optional.empty();
            case TERMINAL -> Optional.of(Part.Kind.TERMINAL);
            case SEAL -> Optional.of(Part.Kind.SEAL);
            case PLUG -> Optional.of(Part.Kind.PLUG);
        };
    }

    /** The word of the language for a kind of part. */
    private static String kind(Part.Kind kind) {
        return switch (kind) {
            case FUSIBLE_LINK -> "fusibleLink";
            case RESISTOR_CABLE -> "resistorCable";
            case SPLICE_METHOD -> "spliceMethod";
            default -> kind.name().toLowerCase(Locale.ROOT);
        };
    }

    private static Draft draft(Findings findings, String owner, String element, String subject, String use, Ref ref,
            Part part) {
        return findings.about(owner, element, subject).key(use + " " + part.name())
                .at(ref.span(), "a " + kind(part.kind()))
                .see(part.name().span(), kind(part.kind()) + " " + part.name())
                .says(kind(part.kind()) + " " + part.name() + " cannot serve as " + use);
    }

    /** Asks the references of one platform. */
    private record Search(Map<String, Part> parts, PlatformView platform, Findings findings) {

        void ask(String owner, String element, String subject, String use, Ref ref, Expression when,
                Condition within, Set<Part.Kind> kinds) {
            Part part = parts.get(ref.text());
            if (part == null || kinds.contains(part.kind())) {
                return;
            }
            List<String> fitting = parts.values().stream().filter(each -> kinds.contains(each.kind()))
                    .map(each -> each.name().text()).toList();
            Optional<String> near = Spelling.nearest(ref.text(), fitting);
            Draft draft = draft(findings, owner, element, subject, use, ref, part)
                    .when(platform.vehicles().resolve(when).condition().and(within))
                    .advise(near.map(name -> "did you mean \"" + name + "\"?").orElse("name a part of kind "
                            + kinds.stream().map(PartOfWrongKind::kind).collect(Collectors.joining(", "))));
            near.ifPresent(name -> draft.guess("write \"" + name + "\"", new TextEdit(ref.span(), name)));
            draft.report();
        }
    }
}
