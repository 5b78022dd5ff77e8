// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Circuits that cannot be computed, or not as they stand: each gives a finding that names what is wrong. */
class BadCircuitsTest {

    private static final String RULE = "currents-not-known";

    @TempDir
    private Path folder;

    private List<Finding> findings(String example, String... changes) throws Exception {
        String text = Files.readString(Repository.root().resolve("docs/examples/broken/" + example + ".loom"));
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(text.contains(changes[i]), changes[i]);
            text = text.replace(changes[i], changes[i + 1]);
        }
        Files.writeString(folder.resolve("bad.loom"), text);
        Opened opened = Repository.open(folder, "bad.loom", Repository.reader(), 1);
        return StandardRules.engine().check(opened.project(), Settings.on(LocalDate.of(2026, 1, 1)), Cancel.NEVER,
                Progress.NONE).counting();
    }

    private void finds(String rule, String words, String... changes) throws Exception {
        List<Finding> all = findings(RULE + "-mended", changes);
        assertTrue(all.stream().anyMatch(each -> each.rule().equals(rule) && each.sentence().contains(words)),
                () -> all.stream().map(each -> each.rule() + ": " + each.sentence()).toList().toString());
    }

    @Test
    void noSource() throws Exception {
        finds(RULE, "there is no source of current", "        type battery\n", "",
                "source battery \"Battery, 12 V\"", "assembly battery \"Battery, 12 V\"",
                "        voltage 12.6 V\n        resistance 8 mohm\n        polarity plus\n", "");
    }

    @Test
    void sourcesOfDifferentVoltageSideBySide() throws Exception {
        finds(RULE, "lie side by side", "    device lampL", "    device second \"Second battery\" is old at fuseBox on"
                + " body\n    device lampL", "    cable pvc85 \"", "    source old like battery {\n        voltage"
                + " 6.3 V\n    }\n    cable pvc85 \"", "    circuit 2 ", "    circuit 3 \"Second feed\" RD {\n"
                + "        wire a 12 ga from second:plus to F1:line length 100 mm\n    }\n    circuit 2 ");
    }

    @Test
    void aMissingFigure() throws Exception {
        finds(RULE, "states neither power, current nor resistance", "        power 55 W\n", "");
    }

    @Test
    void aResistanceOfNothing() throws Exception {
        finds(RULE, "a strap has a resistance", "    ground body\n",
                "    ground body\n    ground frame\n    strap braid from body to frame 0 ohm\n");
    }

    @Test
    void anAbsurdVoltage() throws Exception {
        List<Finding> all = findings(RULE + "-mended", "voltage 12.8 V", "voltage 12800 V");
        assertTrue(all.stream().anyMatch(each -> each.sentence().contains("12800")), all.toString());
    }

    /** A load so large that nothing can drive its current: it gets no voltage, and what feeds it too much current. */
    @Test
    void aLoadBeyondAllMeasure() throws Exception {
        finds("lamp-too-dim", "Lamp gets 0 % of its design voltage", "power 55 W", "power 550000000 W");
        finds("contact-overloaded", "contact lampSwitch of 10 A carries", "power 55 W", "power 550000000 W");
    }

    @Test
    void aWireOfNoLength() throws Exception {
        finds(RULE, "wire 1a: it is no longer than nothing", "to F1:line length 100 mm", "to F1:line length 0 mm");
    }

    /** A relay that feeds its own coil through its resting contact. */
    @Test
    void aRelayThatNeverSettles() throws Exception {
        List<Finding> all = findings("relay-undecided");
        assertEquals(List.of("relay-undecided"), all.stream().map(Finding::rule)
                .filter(each -> each.startsWith("relay")).toList());
    }
}
