// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Run;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;

/**
 * All that a snapshot can state is compared. Who adds to a snapshot adds a fact here as well, and then a name to the
 * list; otherwise a revision could change it unseen.
 */
class EveryFactTest {

    private static final Map<Class<?>, String> COMPARED = Map.ofEntries(
            Map.entry(Platform.class, "name title supply years breaks groups options constraints zones places "
                    + "positions grounds straps devices modes span"),
            Map.entry(Part.class, "kind name title base figures words sizes pins joins states span"),
            Map.entry(Part.Figure.class, "kind from upTo basis"),
            Map.entry(Part.Size.class, "size diameter mass basis span"),
            Map.entry(Part.Join.class, "from to through states protective when span"),
            Map.entry(Wiring.class, "kind name title platform position when sheets defaults datum runs connectors "
                    + "studs devices circuits placed ours span"),
            Map.entry(Wiring.Defaults.class, "tolerance cable"),
            Map.entry(Wiring.Stud.class, "name place branch ground when span"),
            Map.entry(Wiring.Placed.class, "name part from to when span"),
            Map.entry(Run.class, "kind name from to length breakouts barriers slacks bends when span"),
            Map.entry(Run.Breakout.class, "name after at when span"),
            Map.entry(Run.Bend.class, "name at radius when span"),
            Map.entry(Connector.class, "name title place branch housing mates cavities covers when span"),
            Map.entry(Device.class, "name title part place grounded returns when span"),
            Map.entry(Circuit.class, "name title colours wires splices origins asFactory when span"),
            Map.entry(Circuit.Wire.class, "name sizes cables colours from to lengths legend asFactory when span"),
            Map.entry(Circuit.Splice.class, "name at method when span"),
            Map.entry(Ours.class, "covers settings caps order"),
            Map.entry(Ours.Cap.class, "branch parkedAt within when span"),
            Map.entry(Measure.class, "value tolerance provenance samples end path pinned span"),
            Map.entry(Kit.class, "name title revision platform needs contents sold when span"),
            Map.entry(Waiver.class, "name rule target element reason until when span"));

    @TestFactory
    List<DynamicTest> everythingThatASnapshotStatesIsAFact() {
        return COMPARED.entrySet().stream().map(each -> DynamicTest.dynamicTest(each.getKey().getSimpleName(),
                () -> assertEquals(each.getValue(), String.join(" ", Arrays.stream(each.getKey()
                        .getRecordComponents()).map(component -> component.getName()).toList())))).toList();
    }
}
