// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** What rules take for the surroundings of a harness: the kit that an add-on needs, and sources on both sides. */
class SurroundingsTest {

    /** A battery with a bare facia of 18 ga, a fuse block lead of ours, an add-on lead, and an alternator. */
    private static final String CAR = """
            platform car {
                supply 12 V negative ground
                upgrade addOn
                zone cabin ambient 30 C dry
                place shelf in cabin
                place nose in cabin
                place tail in cabin
                position facia
                ground body
                device battery is battery12 at shelf on body
                device lampL is lamp at nose
                device lampR is lamp at tail
                device alternator is alternator35 at tail on body
                RETURNS
            }
            catalogue parts {
                source battery12 {
                    voltage 12.6 V
                    polarity plus
                    pins plus, minus
                }
                source alternator35 {
                    type alternator
                    voltage 14 V
                    polarity B
                    pins B, case
                }
                lamp lamp {
                    voltage 12 V
                    pins 1, 2
                }
                fuse blade10 {
                    family bladeC
                    basis continuous
                    rating 10 A
                    pins line, load
                    protects line to load
                }
                fuse maxi50 {
                    family bladeE
                    basis continuous
                    rating 50 A
                    pins line, load
                    protects line to load
                }
                housing way2 {
                    cavities 1, 2
                }
                cable xlpe {
                    temperature 125 C
                    size 18 ga
                }
            }
            drawing old of car fills facia {
                cable xlpe
                datum shelf
                branch b from shelf to nose 1 m
                stud G0 at nose on body
                circuit 1 {
                    wire a 18 ga from battery:plus to lampL:1
                }
                circuit 2 {
                    wire a 18 ga from lampL:2 to G0
                }
            }
            """;

    private static List<String> find(String rule, String text) throws BadCall {
        return StandardRules.engine().check(TextProject.open(text).project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).of(rule).stream().filter(each -> !each.inherited())
                .map(each -> each.severity() + " " + each.element()).toList();
    }

    private static String car(String more) {
        return CAR.replace("    RETURNS\n", "") + more;
    }

    private static String addOn(String needs) {
        return car("""
                harness base of car {
                    cable xlpe
                    datum shelf
                    device F1 is blade10 at shelf
                    connector X1 at shelf is way2 mates X2 of more
                    circuit 10 {
                        wire a 14 ga from battery:plus to F1:line length 100 mm
                        wire b 14 ga from F1:load to X1:1 length 100 mm
                    }
                }
                harness more of car {
                    cable xlpe
                    datum shelf
                    branch b from shelf to tail 1 m
                    connector X2 at shelf is way2 mates X1 of base
                    circuit 11 {
                        wire a SIZE from X2:1 to lampR:1
                    }
                }
                kit baseKit revision "A" of car {
                    contains base
                }
                kit moreKit revision "A" of car {
                    NEEDS
                    contains more
                }
                """).replace("    NEEDS\n", needs);
    }

    /** 22 awg of 125 C bears 25 x 0.3255 / 0.823 = 9.9 A, less than 11 A; without the base kit there is no fuse. */
    @Test
    void withAnAddOnTheKitThatItNeedsIsFitted() throws BadCall {
        String thin = addOn("    needs baseKit revision \"A\" or later\n").replace("SIZE", "22 awg");
        assertEquals(List.of("ERROR more:11a"), find("fuse-exceeds-wire", thin));
        assertEquals(List.of(), find("fuse-exceeds-wire", thin.replace("22 awg", "18 awg")));
        assertEquals(List.of(), find("fuse-exceeds-wire", addOn("").replace("SIZE", "22 awg")));
    }

    /** 8 ga bears 80 A x 0.897 at 80 C and more at 30 C; 18 ga bears 23.7 A behind 50 A. */
    @Test
    void theFuseOfAnAlternatorGuardsItsLeadAndNotTheCar() throws BadCall {
        String lead = car("""
                harness charge of car {
                    cable xlpe
                    datum shelf
                    branch b from shelf to tail 1 m
                    device F1 is maxi50 at shelf
                    circuit 40 {
                        wire a 8 ga from battery:plus to F1:line length 100 mm
                        wire b SIZE from F1:load to alternator:B
                    }
                }
                """);
        assertEquals(List.of(), find("fuse-exceeds-wire", lead.replace("SIZE", "8 ga")));
        assertEquals(List.of("ERROR charge:40b"), find("fuse-exceeds-wire", lead.replace("SIZE", "18 ga")));
    }

    /** The lamp lies between two feeds; declared, it may return through what hangs on the other one. */
    @Test
    void aTellTaleBetweenTwoFeedsReturnsWhereItIsDeclaredTo() throws BadCall {
        String between = CAR.replace("RETURNS", "device tell is lamp at nose WORD") + """
                drawing more of car {
                    cable xlpe
                    datum shelf
                    circuit 3 {
                        wire a 18 ga from lampL:1 to tell:1 length 1 m
                        wire b 18 ga from lampR:1 to tell:2 length 1 m
                    }
                }
                """;
        assertEquals(List.of("ERROR car:lampR", "ERROR car:tell"), find("no-return-path", between.replace("WORD", "")));
        assertEquals(List.of("ERROR car:lampR"), find("no-return-path", between.replace("WORD", "returns")));
        assertEquals(List.of("ERROR car:lampR", "ERROR car:tell"), find("no-return-path", between
                .replace("WORD", "returns").replace("        wire b 18 ga from lampR:1 to tell:2 length 1 m\n",
                        "        wire b 18 ga from lampR:1 to lampL:1 length 1 m\n")));
    }

    @Test
    void aBranchToADeviceIsAskedForOnlyWhereAWireEndsThere() throws BadCall {
        String lead = car("""
                harness more of car {
                    cable xlpe
                    datum shelf
                    branch b from shelf to tail 1 m when addOn
                    circuit 11 {
                        wire a 18 ga from battery:plus to lampR:1 WHEN
                    }
                }
                """);
        assertEquals(List.of("end-unreached"), problems(lead.replace(" WHEN", "")));
        assertEquals(List.of(), problems(lead.replace("WHEN", "when addOn")));
    }

    private static List<String> problems(String text) throws BadCall {
        return StandardRules.engine().check(TextProject.open(text).project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE).findings().stream().map(each -> each.rule()).filter("end-unreached"::equals).toList();
    }
}
