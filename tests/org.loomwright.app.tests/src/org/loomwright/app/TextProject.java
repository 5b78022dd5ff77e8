// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Projects that a test writes down: one small car with two years of a drawing, a harness and a kit. */
public final class TextProject {

    /** The whole project in one text. */
    public static final String SMALL = """
            platform orrin "Orrin 1200" {
                supply 12 V negative ground
                years 1966 .. 1967
                option fogLamps
                position front
                place bulkhead
                place lamp
                place fog
            }
            catalogue parts {
                cable pvc "PVC cable, \\"thin\\" wall" {
                    temperature 85 C
                }
                housing plug2 "Plug, 2-way" {
                    cavities 1..2
                }
                terminal tab63 "Tab, 6.3 mm" {
                    takes 0.5 mm2 .. 2.5 mm2
                }
                covering sleeve "Sleeve, 10 mm" {
                    diameter 10 mm
                }
            }
            drawing front66 "Front 1966" of orrin fills front when year = 1966 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            drawing front67 "Front 1967" of orrin fills front when year = 1967 {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 510 mm
                }
                branch b1 from wing to lamp 215 mm
                branch b2 from wing to fog 300 mm on sample of 2 when fogLamps
            }
            harness ours "Front" of orrin fills front {
                covers front66, front67
                cuttingGrid 5 mm
                cable pvc
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 250 mm
                branch b2 from wing to fog 330 mm
                cap b2 at lamp within 400 mm when not fogLamps
                connector J1 at bulkhead is plug2 {
                    terminal 1 is tab63
                }
                connector H1 on b1 is plug2
                connector F1 on b2 is plug2 when fogLamps
                fit sleeve1 is sleeve on main at 20 mm to on main at 480 mm
                circuit 2 "Fog, left" GN/RD when fogLamps {
                    wire a 1.5 mm2 from J1:2 to F1:1
                }
                circuit 1 "Lamp" BK {
                    wire a from J1:1 to H1:1 {
                        size 18 ga when not fogLamps
                        size 16 ga when fogLamps
                        legend "=LAMP"
                    }
                }
            }
            kit box "Front kit" revision "A" of orrin {
                contains ours
                contains plug2 quantity 2 when fogLamps
            }
            """;

    private TextProject() {
    }

    /** Opens a text as {@code all.loom} of a project {@code demo}. */
    public static OpenProject.Opened open(String text) throws BadCall {
        Input input = Input.of("all.loom", text.getBytes(StandardCharsets.UTF_8));
        return new OpenProject(Repository.reader(), 1).open(
                new ProjectPlace("demo", Path.of(""), "demo/", List.of(input)), Cancel.NEVER, Progress.NONE);
    }
}
