// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.routing;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.BundleSize;
import org.loomwright.geometry.Section;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.Length;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** A bundle that does not pass the bore of an opening or covering that is placed on it. */
public final class BundleTooBigForOpening implements Rule<Target.OfHarness> {

    /** The most different bundles at one opening that are told apart; a bound on work, no figure of the trade. */
    private static final int MOST_SHAPES = 256;
    private static final RuleInfo INFO = new RuleInfo("bundle-too-big-for-opening",
            "Does every bundle pass the openings and coverings placed on it?", Severity.ERROR, Kind.ENGINEERING,
            Scope.HARNESS, "geometry: no packing of round wires is thinner than its proven bound; the rule of thumb is"
                    + " 1.2 x root of sum of squares");

    /** A placed opening or covering and its bore in mm. */
    private record Bore(PlacedParts.At at, double mm) {
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfHarness> target() {
        return Target.OfHarness.class;
    }

    @Override
    public void check(Target.OfHarness target, Findings findings) {
        for (PlacedParts.At at : PlacedParts.of(target.wiring(), target.shapes(),
                part -> part.kind() == Part.Kind.OPENING || part.kind() == Part.Kind.COVERING)) {
            figure(at.part(), Part.FigureKind.BORE).ifPresent(bore -> bore(target, new Bore(at, bore), findings));
        }
    }

    /** A length that a part states, in mm. */
    static Optional<Double> figure(Part part, Part.FigureKind kind) {
        return part.figure(kind).map(Part.Figure::from).filter(each -> each.unit().dimension() == Dimension.LENGTH)
                .map(each -> Length.of(each).toMillimetres()).filter(mm -> mm > 0);
    }

    /** What was found in the stretches that one bore encloses. */
    private record Found(Section section, PossibleBundle.TooThick thick, boolean bounded) {

        /** The thicker of two finds, for the vehicles of both. */
        Found or(Found other) {
            boolean thicker = other.thick.usual().diameter().mm() > thick.usual().diameter().mm();
            Found worse = thicker ? other : this;
            return new Found(worse.section, worse.thick.in(thick.when().or(other.thick.when())),
                    bounded || other.bounded);
        }
    }

    private static void bore(Target.OfHarness target, Bore bore, Findings findings) {
        Map<Boolean, Found> found = new TreeMap<>();
        for (Section section : target.shapes().of(target.wiring()).sections()) {
            if (section.size().isPresent() && encloses(target, bore, section)) {
                findings.checkCancelled();
                PossibleBundle bundle = new PossibleBundle(section, MOST_SHAPES);
                for (PossibleBundle.TooThick each : bundle.tooThick(bore.mm(), bore.at().when())) {
                    found.merge(each.certain(), new Found(section, each, bundle.isBounded()), Found::or);
                }
            }
        }
        Optional<Found> certain = Optional.ofNullable(found.get(true));
        certain.ifPresent(each -> report(target, bore, each, each.thick().when(), findings));
        Optional.ofNullable(found.get(false)).ifPresent(each -> report(target, bore, each, certain
                .map(sure -> each.thick().when().minus(sure.thick().when())).orElse(each.thick().when()), findings));
    }

    private static boolean encloses(Target.OfHarness target, Bore bore, Section section) {
        Spot from = bore.at().from();
        if (from.kind() == Spot.Kind.DATUM) {
            return section.from().kind() == Spot.Kind.START && target.shapes().of(target.wiring()).tree()
                    .run(section.run()).map(TreeRun::start).filter(from::equals).isPresent();
        }
        Optional<Length> start = section.from().station().length();
        Optional<Length> end = section.to().station().length();
        Optional<Length[]> stretch = bore.at().stretch();
        if (!from.run().equals(section.run()) || start.isEmpty() || end.isEmpty() || stretch.isEmpty()) {
            return false;
        }
        int low = start.get().compareTo(stretch.get()[1]);
        int high = stretch.get()[0].compareTo(end.get());
        return stretch.get()[0].equals(stretch.get()[1]) ? low <= 0 && high <= 0 : low < 0 && high < 0;
    }

    private static void report(Target.OfHarness target, Bore bore, Found found, Condition when, Findings findings) {
        PossibleBundle.TooThick thick = found.thick();
        String name = bore.at().name();
        String what = bore.at().part().kind() == Part.Kind.OPENING ? "opening " : "covering ";
        BundleSize.Figure least = thick.least().bound();
        BundleSize.Figure usual = thick.usual().diameter();
        String wide = PossibleBundle.mm(bore.mm());
        Draft draft = findings.about(target.wiring().name(), name, what + name).when(when)
                .key(thick.certain() ? "cannot" : "may")
                .weighs(thick.certain() ? INFO.severity() : Severity.NOTE)
                .at(bore.at().placed().name().span(), wide + " wide")
                .see(bore.at().part().name().span(), "part " + bore.at().part().name())
                .says(thick.certain()
                        ? "the bundle at " + found.section().label() + " is at least " + PossibleBundle.mm(least.mm())
                                + " thick and does not pass " + what + name + " of " + wide
                        : "not judged until packed: whether the bundle at " + found.section().label() + ", about "
                                + PossibleBundle.mm(usual.mm()) + " thick, passes " + what + name + " of " + wide)
                .step(thick.usual().wires() + " wires: " + thick.wires())
                .step("no bundle of them is thinner than " + PossibleBundle.mm(least.mm()) + " ("
                        + least.method().words() + (thick.estimated() > 0 ? ", bare conductors where the catalogue"
                        + " states no thickness that was looked up" : "") + ")")
                .step("usually " + PossibleBundle.mm(usual.mm()) + " (" + usual.method().words() + ")")
                .rests(bore.at().part().figure(Part.FigureKind.BORE).map(Part.Figure::basis).orElse(""))
                .advise(advice(target, bore, thick.certain()));
        if (!thick.certain()) {
            BundleSize.Figure packed = thick.usual().packed(target.shapes().packings());
            draft.step("packed tightest " + PossibleBundle.mm(packed.mm()) + " (" + packed.method().words() + "), "
                    + (packed.mm() <= bore.mm() ? "which passes; wires laid by hand may take more"
                            : "which does not pass; that there is none smaller is not proven"));
        }
        if (thick.estimated() > 0) {
            draft.step("the thickness of " + thick.estimated() + (thick.estimated() == 1 ? " wire" : " wires")
                    + " is estimated (common practice) or from memory");
        }
        if (found.bounded()) {
            draft.bounded();
        }
        draft.report();
    }

    private static String advice(Target.OfHarness target, Bore bore, boolean certain) {
        String advice = certain ? "take a wider one, thinner wires, or lead some of them another way"
                : "pack it once on the bench, or take a wider one";
        String loose = bore.at().part().kind() == Part.Kind.OPENING
                ? new LooseHousings(target.wiring(), target.shapes().of(target.wiring()), bore.at(), bore.mm()).words()
                : "";
        return loose.isEmpty() ? advice : advice + "; whichever end goes through, these housings are wider than it and"
                + " stay loose until then: " + loose;
    }
}
