// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.coverage.DrawingsOverlap;
import org.loomwright.rules.coverage.VehicleWithoutDrawing;
import org.loomwright.rules.covering.AddOnNeedsBase;
import org.loomwright.rules.covering.BarrierCrossed;
import org.loomwright.rules.covering.ExcessTooGreat;
import org.loomwright.rules.covering.ExcessTooTightToMake;
import org.loomwright.rules.covering.FitNotProved;
import org.loomwright.rules.covering.LengthUnknown;
import org.loomwright.rules.covering.PlaceNotReached;
import org.loomwright.rules.covering.RoutesDiffer;
import org.loomwright.rules.covering.RunsBackTooFar;
import org.loomwright.rules.covering.TooLongToPark;
import org.loomwright.rules.electric.CircuitsBounded;
import org.loomwright.rules.electric.ElectricRule;
import org.loomwright.rules.electric.OtherHalfAssumed;
import org.loomwright.rules.marking.ColourMeansAnotherCircuit;
import org.loomwright.rules.marking.ColoursAlikeInHousing;
import org.loomwright.rules.marking.LegendDoesNotFit;
import org.loomwright.rules.mating.MateDoesNotMatch;
import org.loomwright.rules.parts.CavityWithoutTerminal;
import org.loomwright.rules.parts.FuseNotIdentified;
import org.loomwright.rules.parts.PartOfWrongKind;
import org.loomwright.rules.parts.PlugInWiredCavity;
import org.loomwright.rules.parts.TerminalDoesNotTakeWire;
import org.loomwright.rules.parts.UnsealedInWetZone;
import org.loomwright.rules.parts.WrongPolarity;
import org.loomwright.rules.parts.WrongSystemVoltage;
import org.loomwright.rules.protection.BatterySideOfAmmeter;
import org.loomwright.rules.protection.CappedBranchIsLive;
import org.loomwright.rules.protection.FloatingGround;
import org.loomwright.rules.protection.FuseExceedsWire;
import org.loomwright.rules.protection.LinkDoesNotProtect;
import org.loomwright.rules.protection.NoFeedPath;
import org.loomwright.rules.protection.NoProtection;
import org.loomwright.rules.protection.NoReturnPath;
import org.loomwright.rules.protection.OneDeviceDarkensBothHeadlamps;
import org.loomwright.rules.routing.BendTooTight;
import org.loomwright.rules.routing.BreakoutsTooClose;
import org.loomwright.rules.routing.BundleTooBigForOpening;
import org.loomwright.rules.routing.ClampSpacing;
import org.loomwright.rules.routing.SpliceInFlexOrOpening;
import org.loomwright.rules.routing.SplicesNotStaggered;
import org.loomwright.rules.routing.ZoneTooHotForInsulation;
import org.loomwright.rules.wiring.CavityTakenTwice;
import org.loomwright.rules.wiring.DuplicateCircuit;
import org.loomwright.rules.wiring.NeverExists;
import org.loomwright.rules.wiring.OrphanWire;
import org.loomwright.rules.wiring.SpliceWithTooFewWires;
import org.loomwright.rules.wiring.UnknownCavity;
import org.loomwright.rules.wiring.WireToItself;

/** All rules. */
public final class StandardRules {

    private StandardRules() {
    }

    /** Returns the book of all rules. */
    public static RuleBook book() {
        List<Rule<?>> rules = new ArrayList<>(List.of(
                new DuplicateCircuit(),
                new OrphanWire(),
                new WireToItself(),
                new CavityTakenTwice(),
                new UnknownCavity(),
                new SpliceWithTooFewWires(),
                new NeverExists(),
                new VehicleWithoutDrawing(),
                new DrawingsOverlap(),
                new FuseExceedsWire(),
                new NoProtection(),
                new LinkDoesNotProtect(),
                new NoReturnPath(),
                new NoFeedPath(),
                new FloatingGround(),
                new BatterySideOfAmmeter(),
                new ZoneTooHotForInsulation(),
                new CappedBranchIsLive(),
                new OneDeviceDarkensBothHeadlamps(),
                new LengthUnknown(),
                new PlaceNotReached(),
                new ExcessTooGreat(),
                new RunsBackTooFar(),
                new TooLongToPark(),
                new RoutesDiffer(),
                new FitNotProved(),
                new BarrierCrossed(),
                new ExcessTooTightToMake(),
                new AddOnNeedsBase(),
                new SplicesNotStaggered(),
                new SpliceInFlexOrOpening(),
                new ClampSpacing(),
                new BreakoutsTooClose(),
                new BundleTooBigForOpening(),
                new BendTooTight(),
                new FuseNotIdentified(),
                new TerminalDoesNotTakeWire(),
                new MateDoesNotMatch(),
                new WrongPolarity(),
                new WrongSystemVoltage(),
                new ColoursAlikeInHousing(),
                new ColourMeansAnotherCircuit(),
                new LegendDoesNotFit(),
                new UnsealedInWetZone(),
                new CavityWithoutTerminal(),
                new PlugInWiredCavity(),
                new PartOfWrongKind()));
        rules.addAll(ElectricRule.all());
        rules.add(new CircuitsBounded());
        rules.add(new OtherHalfAssumed());
        return new RuleBook(rules);
    }

    /** Returns the rules that ask how harnesses fit; waivers of the others are left alone. */
    public static RuleBook fitBook() {
        return book().part(Set.of("length-unknown", "place-not-reached", "excess-too-great", "runs-back-too-far",
                "too-long-to-park", "routes-differ", "fit-not-proved", "barrier-crossed", "excess-too-tight-to-make"));
    }

    /** Returns an engine that runs all of them with one thread. */
    public static RuleEngine engine() {
        return engine(1);
    }

    /** Returns an engine that runs all of them with at most so many threads. */
    public static BookRuleEngine engine(int threads) {
        return new BookRuleEngine(book(), threads);
    }
}
