// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.electric;

import java.util.List;
import java.util.Optional;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Remark;
import org.loomwright.electric.network.Subject;
import org.loomwright.electric.survey.LoadFaults;
import org.loomwright.electric.survey.Survey;
import org.loomwright.harness.Span;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;
import org.loomwright.rules.protection.FusedTerminals;

/**
 * A rule about operating points: it reports the faults of its id that the survey of a network has found. The worst
 * operating point stands in the finding; its vehicles are those that have the fault in some mode.
 */
public final class ElectricRule implements Rule<Target.OfNetwork> {

    private static final String UNKNOWN = "currents-not-known";

    private final RuleInfo info;

    private ElectricRule(String id, String title, Severity severity, String basis) {
        info = new RuleInfo(id, title, severity, Kind.ENGINEERING, Scope.OPERATING_POINTS, basis);
    }

    /** Returns all rules of this sort, in order. */
    public static List<Rule<?>> all() {
        return List.of(
                new ElectricRule("lamp-too-dim", "Does every lamp get enough voltage while the engine runs?",
                        Severity.ERROR, "Cal. Code Regs. title 13 s. 1249(c): at least 85 % of the design voltage at"
                                + " the socket"),
                new ElectricRule("lamp-over-voltage", "Does no lamp get more voltage than it stands?",
                        Severity.WARNING, "common practice: at most 115 % of the design voltage"),
                new ElectricRule("drop-too-high", "Is little lost between the source and each load?",
                        Severity.WARNING, "common practice: 0.5 V for a headlamp, 10 % of the supply for others"),
                new ElectricRule("wire-overloaded", "May every wire carry what flows in it?", Severity.ERROR,
                        "33 CFR 183.425 Table 5, with the wires of the bundle that carry current in the mode"),
                new ElectricRule("wire-too-hot", "Does the insulation of every wire stand its heat?", Severity.ERROR,
                        "33 CFR 183.425 Table 5; short-time limit of the cable, else class + 50 C (ISO 6722-1, from"
                                + " memory)"),
                new ElectricRule("fuse-too-small-for-load", "Does every fuse carry its loads?", Severity.WARNING,
                        "common practice: at most 80 % of the rating for longer than ten minutes"),
                new ElectricRule("contact-overloaded", "May every switch and relay carry what flows in it?",
                        Severity.ERROR, "the rating that the catalogue states"),
                new ElectricRule("terminal-overloaded", "May every terminal carry what flows in it?",
                        Severity.ERROR, "the rating that the catalogue states"),
                new ElectricRule("relay-undecided", "Does every relay know whether to pull in?", Severity.ERROR,
                        "pull-in and drop-out voltage of the catalogue, coil at 80 C"),
                new ElectricRule("flasher-load-out-of-range", "Does every flasher have the load that it needs?",
                        Severity.ERROR, "the window of currents that the catalogue states"),
                new ElectricRule("sneak-path", "Does nothing work that is switched off?", Severity.WARNING,
                        "common practice: what is off carries at most 5 % of its current"),
                new ElectricRule("wakes-when-opened", "Does nothing wake when a ground or a fuse is lost?",
                        Severity.NOTE, "common practice: what is off carries at most 5 % of its current"),
                new ElectricRule("intended-return-lost", "Does every load work that returns through others?",
                        Severity.WARNING, "common practice: it carries at least 50 % of its current"),
                new ElectricRule("drain-with-key-off", "Does nothing drain the battery with the key off?",
                        Severity.WARNING, "common practice: at most 50 mA for each load"),
                new ElectricRule("runs-on-after-key-off", "Does the ignition stop when the key is turned off?",
                        Severity.ERROR, "common practice: nothing leads from a turning machine to the ignition"),
                new ElectricRule("short-not-cleared-in-time", "Is every dead short cleared in time?", Severity.ERROR,
                        "least and greatest current of a dead short at the end of each wire, against what the device"
                                + " carries and breaks; opening times from memory"),
                new ElectricRule("not-selective", "Does the device nearest to a fault open first?",
                        Severity.WARNING, "common practice: the smaller rating nearer to the load"),
                new ElectricRule("fuse-opens-at-start", "Does every fuse stand the start of its loads?",
                        Severity.WARNING, "current at start that the catalogue states; cold filaments and fastest"
                                + " opening of blade fuses from memory"),
                new ElectricRule("no-excitation", "Does every machine get the current that it needs to charge?",
                        Severity.WARNING, "common practice: at least 100 mA through the charge lamp of an"
                                + " alternator"),
                new ElectricRule(UNKNOWN, "Can the currents of every circuit be computed?", Severity.WARNING,
                        "what the sources must state before anything can be solved"));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        Optional<Survey> survey = target.circuits(findings.cancel()).survey();
        if (info.id().equals(UNKNOWN) && survey.isPresent()) {
            survey.get().schematic().remarks().forEach(each -> remark(target, each, findings));
        } else if (info.id().equals(UNKNOWN)) {
            sourceless(target, findings);
        }
        if (info.id().equals("terminal-overloaded") && survey.isEmpty()) {
            FusedTerminals.check(target, findings);
        }
        for (Survey.Found found : survey.map(each -> each.of(info.id())).orElse(List.of())) {
            Piece piece = found.fault().piece();
            Subject subject = piece.subject();
            boolean ours = target.connections().fitment().ours();
            boolean own = target.connections().fitment().isOurs(subject.owner());
            boolean part = found.fault().owners().stream()
                    .anyMatch(target.connections().fitment()::isOurs);
            boolean drawn = target.connections().fitment().fitted().containsKey(subject.owner()) && !own;
            if (ours && !own && !part && (drawn || !info.id().equals(UNKNOWN))) {
                continue; // what is not solved is said wherever the vehicle's own devices are
            }
            Draft draft = subject.wire().map(findings::about)
                    .orElseGet(() -> findings.about(subject.owner(), subject.element(), subject.label()));
            if (ours) {
                draft.ours();
            } else {
                draft.factory();
            }
            draft.when(found.when()).at(place(subject), subject.label())
                    .says(found.fault().words() + ", in mode " + found.mode().name())
                    .advise(found.fault().advice()).key(info.id() + " " + subject.label()
                            + (found.fault().memory().isEmpty() ? "" : " from memory"));
            found.fault().steps().forEach(draft::step);
            if (!found.exact()) {
                bounds(found, draft);
            }
            draft.step("mode " + found.mode().name() + ", engine " + found.mode().engine().word()
                    + (ours ? "; " + target.connections().fitment().words() : ""));
            if (piece.basis().contains("from memory") && found.fault().rule().equals("contact-overloaded")) {
                draft.rests(piece.basis());
            }
            draft.rests(found.fault().memory());
            LoadFaults.limit(found.fault()).ifPresent(limit -> draft.see(target.connections().fitment().platform()
                    .limits().place(limit), "the practice's limit"));
            if (!found.mode().place().equals(Span.NONE)) {
                draft.see(found.mode().place(), "mode " + found.mode().name());
            }
            draft.report();
        }
    }

    /** Some of the vehicles may have it, depending on what their other circuits draw. */
    private static void bounds(Survey.Found found, Draft draft) {
        draft.step("with the most and the least that other circuits draw in any vehicle");
        if (found.sure().isNever()) {
            draft.weighs(Severity.NOTE).step("not judged: no vehicle is sure to have it");
        } else {
            draft.step("sure in " + found.sure().words() + "; the others may have it");
        }
    }

    /** A platform that says what is switched on, and feeds nothing. */
    private static void sourceless(Target.OfNetwork target, Findings findings) {
        var fitment = target.connections().fitment();
        var platform = fitment.platform().platform();
        if (target.connections().supplies().isEmpty() && !platform.modes().isEmpty()
                && !target.connections().loads().isEmpty()) {
            Draft draft = findings.about(fitment.platform().name(), "", "platform " + fitment.platform().name());
            if (fitment.ours()) {
                draft.ours();
            } else {
                draft.factory();
            }
            draft.when(fitment.domain()).at(platform.name().span(), "nothing feeds it").key("no source")
                    .says("there is no source of current: nothing is computed")
                    .advise("declare a device whose part is a source, a battery for example").report();
        }
    }

    /** What is missing or cannot be: the factory's with the factory's networks, ours and the vehicle's with ours. */
    private static void remark(Target.OfNetwork target, Remark remark, Findings findings) {
        Subject subject = remark.subject();
        boolean ours = target.connections().fitment().ours();
        boolean drawn = target.connections().fitment().fitted().containsKey(subject.owner())
                && !target.connections().fitment().isOurs(subject.owner());
        if (ours && drawn) {
            return;
        }
        Draft draft = subject.wire().map(findings::about)
                .orElseGet(() -> findings.about(subject.owner(), subject.element(), subject.label()));
        if (ours) {
            draft.ours();
        } else {
            draft.factory();
        }
        draft.when(remark.when()).at(place(subject), subject.label()).says(subject.label() + ": " + remark.words())
                .advise("state what is missing, then currents and voltages are judged with it")
                .key(UNKNOWN + " " + subject.label() + " " + remark.words()).report();
    }

    private static Span place(Subject subject) {
        return subject.place().equals(Span.NONE) ? subject.wire().map(wire -> wire.wire().span())
                .orElse(subject.place()) : subject.place();
    }
}
