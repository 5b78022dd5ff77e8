// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.names;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Symbol.Kind;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;

/** Finds what a word names, by the rules of the language for where a name is looked for. */
final class Meaning {

    private final Project project;
    private final Map<Symbol, List<Span>> declared;

    Meaning(Project project, Map<Symbol, List<Span>> declared) {
        this.project = project;
        this.declared = declared;
    }

    /** What a name that is given somewhere stands for. */
    static Optional<Symbol> declares(Word word, Around around, Line line) {
        String name = word.text();
        String wiring = around.wiring();
        String platform = around.platform();
        return Optional.ofNullable(switch (word.slot().rule()) {
            case "Platform" -> new Symbol(Kind.PLATFORM, "", name);
            case "Catalogue" -> new Symbol(Kind.CATALOGUE, "", name);
            case "Drawing" -> new Symbol(Kind.DRAWING, "", name);
            case "Harness" -> new Symbol(Kind.HARNESS, "", name);
            case "Kit" -> new Symbol(Kind.KIT, "", name);
            case "Practice" -> new Symbol(Kind.PRACTICE, "", name);
            case "Waiver" -> new Symbol(Kind.WAIVER, "", name);
            case "Part" -> new Symbol(Kind.PART, "", name);
            case "PinRange" -> new Symbol(Kind.PIN, around.part(), name);
            case "Zone" -> new Symbol(Kind.ZONE, platform, name);
            case "Place" -> new Symbol(Kind.PLACE, platform, name);
            case "Position" -> new Symbol(Kind.POSITION, platform, name);
            case "GroundNode" -> new Symbol(Kind.GROUND, platform, name);
            case "Strap" -> new Symbol(Kind.STRAP, platform, name);
            case "Mode" -> new Symbol(Kind.MODE, platform, name);
            case "Group" -> new Symbol(Kind.AXIS, platform, name);
            case "Member", "Option", "YearBreak" -> new Symbol(Kind.CHOICE, platform, name);
            case "Never", "Requirement" -> new Symbol(Kind.CONSTRAINT, platform, name);
            case "Device" -> new Symbol(Kind.DEVICE, wiring.isEmpty() ? platform : wiring, name);
            case "Trunk", "Branch" -> new Symbol(Kind.RUN, wiring, name);
            case "Breakout" -> new Symbol(Kind.BREAKOUT, wiring, name);
            case "Barrier" -> new Symbol(Kind.BARRIER, wiring + "/" + around.run(), name);
            case "Bend" -> new Symbol(Kind.BEND, wiring + "/" + around.run(), name);
            case "Connector" -> new Symbol(Kind.CONNECTOR, wiring, name);
            case "Stud" -> new Symbol(Kind.STUD, wiring, name);
            case "Splice" -> new Symbol(Kind.SPLICE, wiring, name);
            case "Circuit" -> new Symbol(Kind.CIRCUIT, wiring, name);
            case "Wire" -> new Symbol(Kind.WIRE, wiring + "/" + around.circuit(), name);
            case "Placed" -> new Symbol(Kind.PLACED, wiring, name);
            default -> null;
        });
    }

    /** What a word names; empty for one that names nothing, or nothing that there is. */
    Optional<Symbol> of(Word word, Line line, WordLines lines) {
        return switch (word.slot().sort()) {
            case NAME -> declares(word, Around.of(lines, line), line);
            case REFERENCE -> reference(word, line, lines);
            case PIN -> pin(word, line, Around.of(lines, line));
            default -> Optional.empty();
        };
    }

    private Optional<Symbol> reference(Word word, Line line, WordLines lines) {
        Around around = Around.of(lines, line);
        String name = word.text();
        String wiring = around.wiring();
        String platform = around.platform();
        return switch (word.slot().target()) {
            case "Zone" -> known(new Symbol(Kind.ZONE, platform, name));
            case "Place" -> known(new Symbol(Kind.PLACE, platform, name));
            case "Position" -> known(new Symbol(Kind.POSITION, platform, name));
            case "GroundNode" -> known(new Symbol(Kind.GROUND, platform, name));
            case "Mode" -> known(new Symbol(Kind.MODE, platform, name));
            case "Platform" -> known(new Symbol(Kind.PLATFORM, "", name));
            case "Drawing", "Wiring" -> wiring(name);
            case "Kit" -> known(new Symbol(Kind.KIT, "", name));
            case "Part" -> known(new Symbol(Kind.PART, "", name));
            case "Branch", "Run" -> known(new Symbol(Kind.RUN, wiring, name));
            case "Breakout" -> known(new Symbol(Kind.BREAKOUT, wiring, name));
            case "Point" -> known(new Symbol(Kind.BREAKOUT, wiring, name), new Symbol(Kind.RUN, wiring, name),
                    new Symbol(Kind.PLACE, platform, name));
            case "Device" -> known(new Symbol(Kind.DEVICE, platform, name));
            case "Endable" -> endable(name, wiring, platform);
            case "Mateable" -> mateable(name, mateOwner(word, line), wiring, platform);
            case "Item" -> wiring(name).or(() -> known(new Symbol(Kind.PART, "", name)));
            case "Named" -> wiring(name).or(() -> known(new Symbol(Kind.KIT, "", name),
                    new Symbol(Kind.PLATFORM, "", name)));
            case "Choice", "Member" -> choice(Kind.CHOICE, name, line, lines);
            case "Axis" -> choice(Kind.AXIS, name, line, lines);
            case "Rule" -> Optional.of(new Symbol(Kind.RULE, "", name));
            case "Limit" -> Optional.of(new Symbol(Kind.LIMIT, "", name));
            case "OriginCircuit" -> known(new Symbol(Kind.CIRCUIT, line.text("drawing"), name));
            case "WaivedElement" -> waived(name, line.text("target"));
            default -> Optional.empty();
        };
    }

    private Optional<Symbol> known(Symbol... candidates) {
        return Stream.of(candidates).filter(declared::containsKey).findFirst();
    }

    private Optional<Symbol> wiring(String name) {
        return known(new Symbol(Kind.DRAWING, "", name), new Symbol(Kind.HARNESS, "", name));
    }

    Optional<Symbol> endable(String name, String wiring, String platform) {
        return known(new Symbol(Kind.CONNECTOR, wiring, name), new Symbol(Kind.SPLICE, wiring, name),
                new Symbol(Kind.STUD, wiring, name), new Symbol(Kind.DEVICE, wiring, name),
                new Symbol(Kind.DEVICE, platform, name));
    }

    /** The drawing or harness that a mate is said to be of. */
    private static String mateOwner(Word word, Line line) {
        for (Word other : line.words()) {
            if (other.offset() > word.offset() && other.slot().target().equals("Wiring")) {
                return other.text();
            }
        }
        return "";
    }

    private Optional<Symbol> mateable(String name, String owner, String wiring, String platform) {
        return owner.isEmpty()
                ? known(new Symbol(Kind.DEVICE, platform, name), new Symbol(Kind.CONNECTOR, wiring, name),
                        new Symbol(Kind.DEVICE, wiring, name))
                : known(new Symbol(Kind.CONNECTOR, owner, name));
    }

    /** A choice of the platform; where no platform is near, as in a catalogue, of the first one that has it. */
    private Optional<Symbol> choice(Kind kind, String name, Line line, WordLines lines) {
        Optional<String> platform = PlatformOf.line(project, lines.outwards(line));
        if (platform.isPresent()) {
            return known(new Symbol(kind, platform.get(), name));
        }
        return project.platforms().keySet().stream().map(each -> new Symbol(kind, each, name))
                .filter(declared::containsKey).findFirst();
    }

    private Optional<Symbol> waived(String element, String target) {
        Optional<WireView> wire = project.wiring(target).stream().flatMap(view -> view.wires().stream())
                .filter(each -> each.label().equals(element)).findFirst();
        if (wire.isPresent()) {
            return known(new Symbol(Kind.WIRE, target + "/" + wire.get().circuit().name(),
                    wire.get().wire().name().text()));
        }
        return Stream.of(Kind.CONNECTOR, Kind.SPLICE, Kind.STUD, Kind.DEVICE, Kind.CIRCUIT, Kind.RUN, Kind.BREAKOUT,
                        Kind.PLACED, Kind.PLACE, Kind.POSITION, Kind.CONSTRAINT)
                .map(kind -> new Symbol(kind, target, element)).filter(declared::containsKey).findFirst();
    }

    private Optional<Symbol> pin(Word word, Line line, Around around) {
        String name = word.text();
        return switch (word.slot().property()) {
            case "Join.from", "Join.to", "PinRange.upTo" -> known(new Symbol(Kind.PIN, around.part(), name));
            case "End.cavity" -> before(word, line).flatMap(target -> endable(target, around.wiring(),
                    around.platform())).flatMap(this::partOf).map(part -> new Symbol(Kind.PIN, part, name));
            case "CavityFact.cavity" -> partOf(new Symbol(Kind.CONNECTOR, around.wiring(), around.connector()))
                    .map(part -> new Symbol(Kind.PIN, part, name));
            default -> Optional.empty();
        };
    }

    /** The name before the colon of an end. */
    private static Optional<String> before(Word word, Line line) {
        String found = null;
        for (Word other : line.words()) {
            if (other.offset() < word.offset() && other.slot().is("End.target")) {
                found = other.text();
            }
        }
        return Optional.ofNullable(found);
    }

    /** The catalogue part that a connector or device is, the first one where it depends on the vehicle. */
    private Optional<String> partOf(Symbol symbol) {
        Optional<WiringView> view = project.wiring(symbol.owner());
        if (symbol.kind() == Kind.CONNECTOR) {
            return view.map(each -> each.connectors().get(symbol.name())).map(ConnectorView::housings)
                    .flatMap(Meaning::first);
        }
        DeviceView device = view.map(each -> each.devices().get(symbol.name()))
                .orElseGet(() -> Optional.ofNullable(project.platforms().get(symbol.owner()))
                        .map(each -> each.devices().get(symbol.name())).orElse(null));
        return Optional.ofNullable(device).map(DeviceView::parts).flatMap(Meaning::first);
    }

    private static Optional<String> first(List<Case<org.loomwright.harness.Part>> cases) {
        return cases.stream().findFirst().map(each -> each.value().name().text());
    }
}
