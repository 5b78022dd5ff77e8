// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.standard;

import java.util.List;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.coverage.DrawingsOverlap;
import org.loomwright.rules.coverage.VehicleWithoutDrawing;
import org.loomwright.rules.protection.FuseExceedsWire;
import org.loomwright.rules.protection.NoProtection;
import org.loomwright.rules.protection.NoReturnPath;
import org.loomwright.rules.wiring.CavityTakenTwice;
import org.loomwright.rules.wiring.DuplicateCircuit;
import org.loomwright.rules.wiring.NeverExists;
import org.loomwright.rules.wiring.OrphanWire;
import org.loomwright.rules.wiring.SpliceWithTooFewWires;
import org.loomwright.rules.wiring.UnknownCavity;

/** All rules. */
public final class StandardRules {

    private StandardRules() {
    }

    /** Returns the book of all rules. */
    public static RuleBook book() {
        return new RuleBook(List.of(
                new DuplicateCircuit(),
                new OrphanWire(),
                new CavityTakenTwice(),
                new UnknownCavity(),
                new SpliceWithTooFewWires(),
                new NeverExists(),
                new VehicleWithoutDrawing(),
                new DrawingsOverlap(),
                new FuseExceedsWire(),
                new NoProtection(),
                new NoReturnPath()));
    }

    /** Returns an engine that runs them. */
    public static RuleEngine engine() {
        return new BookRuleEngine(book());
    }
}
