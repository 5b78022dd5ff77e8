// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.marking;

import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.geometry.CutLength;
import org.loomwright.geometry.CutLengths;
import org.loomwright.geometry.CutSettings;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Shapes;
import org.loomwright.rules.Target;

/**
 * A print legend of ours that is longer than what can be seen of its wire in some vehicle. A wire whose length is not
 * known is not asked.
 */
public final class LegendDoesNotFit implements Rule<Target.OfProject> {

    private static final RuleInfo INFO = new RuleInfo("legend-does-not-fit",
            "Does every print legend fit on its wire?", Severity.WARNING, Kind.ENGINEERING, Scope.PROJECT,
            "common practice: 2 mm a character, and 15 mm at each end that nobody sees");

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
        for (WiringView harness : project.harnesses()) {
            findings.checkCancelled();
            if (harness.wires().stream().anyMatch(wire -> !wire.wire().legend().isEmpty())) {
                Shapes.Shape shape = target.shapes().of(harness);
                CutLengths lengths = new CutLengths(shape.tree(), project.parts(), CutSettings.usual());
                for (WireView wire : harness.wires()) {
                    if (!wire.wire().legend().isEmpty()) {
                        wire(project, harness, wire, lengths.of(shape.route(wire)), findings);
                    }
                }
            }
        }
    }

    private static void wire(Project project, WiringView harness, WireView wire, Iterable<CutLength> lengths,
            Findings findings) {
        Limits limits = harness.platform().limits();
        int characters = wire.wire().legend().codePointCount(0, wire.wire().legend().length());
        double pitch = limits.length(Limit.LEGEND_PITCH).toMillimetres();
        double legend = pitch * characters;
        double hidden = limits.length(Limit.LEGEND_HIDDEN).toMillimetres();
        Condition when = wire.when().vehicles().none();
        Optional<Length> shortest = Optional.empty();
        for (CutLength each : lengths) {
            if (each.cut().isPresent() && legend > visible(each.cut().get(), hidden)) {
                when = when.or(each.when());
                shortest = shortest.filter(before -> before.compareTo(each.cut().get()) <= 0).or(each::cut);
            }
        }
        if (shortest.isEmpty()) {
            return;
        }
        double visible = visible(shortest.get(), hidden);
        int most = (int) Math.floor(visible / pitch);
        Draft draft = findings.about(wire).when(when).key(wire.wire().legend())
                .at(span(project, wire), Figure.of(legend) + " mm long")
                .see(wire.wire().name().span(), "wire " + wire.label())
                .says("the legend \"" + wire.wire().legend() + "\" is " + Figure.of(legend) + " mm long, and "
                        + Figure.of(visible) + " mm of wire " + wire.label() + " can be seen")
                .see(limits.place(Limit.LEGEND_PITCH), "the practice's limit")
                .see(limits.place(Limit.LEGEND_HIDDEN), "the practice's limit")
                .step(characters + " characters x " + Figure.of(pitch) + " mm = " + Figure.of(legend) + " mm ("
                        + limits.cite(Limit.LEGEND_PITCH) + ")")
                .step("cut length " + Figure.of(shortest.get().toMillimetres()) + " mm - 2 x "
                        + Figure.of(hidden) + " mm at the ends (" + limits.cite(Limit.LEGEND_HIDDEN) + ") = "
                        + Figure.of(visible) + " mm")
                .advise(most > 0 ? "print at most " + most + " characters, or tag the wire instead"
                        : "tag the wire instead of printing it");
        draft.report();
    }

    private static double visible(Length cut, double hidden) {
        return Math.max(0, cut.toMillimetres() - 2 * hidden);
    }

    /** Where the legend stands in the text of the wire; the wire's name where it is not found. */
    private static Span span(Project project, WireView wire) {
        Span whole = wire.wire().span();
        Span name = wire.wire().name().span();
        String quoted = "\"" + wire.wire().legend() + "\"";
        return project.text(whole.file()).filter(text -> whole.end() <= text.length()).flatMap(text -> {
            int at = text.substring(0, whole.end()).indexOf(quoted, whole.offset());
            return at < 0 ? Optional.empty() : Optional.of(new Span(whole.file(), at, quoted.length(),
                    whole.line() + (int) text.substring(whole.offset(), at).chars().filter(c -> c == '\n').count(),
                    at - text.lastIndexOf('\n', at)));
        }).orElse(name.equals(Span.NONE) ? whole : name);
    }
}
