// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import static java.util.Map.entry;

import java.util.Map;
import java.util.Optional;

/** What each construct of the language looks like and what it says, in a line each. */
public final class Constructs {

    /**
     * A construct.
     *
     * @param form    what it looks like; capitals stand for names
     * @param meaning what it says
     */
    public record Construct(String form, String meaning) {
    }

    private static final Map<String, Construct> KNOWN = Map.ofEntries(
            entry("Platform", "platform NAME \"title\" {",
                    "a family of vehicles: its years, choices, places, devices and grounds"),
            entry("Supply", "supply 12 V negative ground", "the nominal voltage and which pole is grounded"),
            entry("Years", "years 1964 .. 1971", "the model years, first and last included"),
            entry("YearBreak", "break NAME in 1967 \"from car 12345\"", "a change within a model year"),
            entry("Group", "group NAME of one, other", "a choice of which each vehicle has exactly one member"),
            entry("Option", "option NAME \"title\", or upgrade NAME",
                    "what the factory could add; an upgrade is added later by an owner"),
            entry("Never", "never NAME: condition", "vehicles that cannot exist"),
            entry("Requirement", "require NAME: condition when condition",
                    "what a vehicle must have when it has something else"),
            entry("Zone", "zone NAME ambient 80 C wet", "a region with one ambient temperature"),
            entry("Place", "place NAME \"title\" in ZONE when condition", "a named spot in the vehicle"),
            entry("Position", "position NAME \"title\"",
                    "a spot that one harness fills; drawings that fill the same one are alternatives"),
            entry("GroundNode", "ground NAME",
                    "a ground node: body, engine, frame; none for a shell that conducts nothing"),
            entry("Strap", "strap NAME from GROUND to GROUND 5 mohm", "a joint between two ground nodes"),
            entry("Device", "device NAME \"title\" is PART at PLACE on GROUND",
                    "a thing that a harness connects; returns declares a current through it to ground as intended"),
            entry("Mode", "mode NAME extends MODE {", "a set of switch positions and engine state"),
            entry("ModeSetting", "set DEVICE to STATE", "what state a device, or the engine, is in"),
            entry("Note", "note \"text\"", "a remark"),
            entry("Catalogue", "catalogue NAME \"title\" {", "a list of parts"),
            entry("Part", "KIND NAME \"title\" like PART {",
                    "a catalogue part; like another one it states only what differs"),
            entry("FigureFact", "rating 10 A source \"where it comes from\"",
                    "a figure of a part, or a range of it with .., and its source"),
            entry("WordFact", "family NAME", "a word about a part"),
            entry("SizeRow", "size 18 ga diameter 2.2 mm source \"where from\"", "one size that a cable is made in"),
            entry("PinRow", "pins 1 .. 3, or cavities 1 .. 12", "the pins of a device or the cavities of a housing"),
            entry("Join", "joins 1 to 2 through 5 mohm while on",
                    "an internal connection; protects for a fuse, link or breaker"),
            entry("StateRow", "states off, on", "the states of a switch; the first one is the state at rest"),
            entry("Drawing", "drawing NAME \"title\" of PLATFORM fills POSITION when condition {",
                    "what the factory made: evidence"),
            entry("Harness", "harness NAME \"title\" of PLATFORM fills POSITION {", "what we make"),
            entry("Sheet", "sheet \"number\" issue \"C\"", "the factory sheet that it was read from"),
            entry("DefaultTolerance", "tolerance \u00b1 10 mm", "the tolerance of every length that states none"),
            entry("Datum", "datum PLACE", "the place where the trunk is pinned; stations count from it"),
            entry("Trunk", "trunk NAME {", "a run that starts at the datum"),
            entry("Branch", "branch NAME from BREAKOUT to PLACE 180 mm", "a run that serves a place"),
            entry("Breakout", "breakout NAME at 12.5 in",
                    "where a branch leaves the run; after NAME counts from another breakout"),
            entry("Barrier", "barrier NAME at 60 mm", "a grommet, hole or hinge that no breakout may cross"),
            entry("Bend", "bend NAME at 300 mm radius 25 mm", "where the run turns sharply"),
            entry("Slack", "slack before BREAKOUT at most 20 mm",
                    "how much of the run before a breakout may be taken up"),
            entry("Connector", "connector NAME at PLACE, or on BRANCH, is HOUSING mates DEVICE",
                    "a connector; mates NAME of DRAWING for one of another harness"),
            entry("IsFact", "is PART when condition", "what it is, for some vehicles"),
            entry("MatesFact", "mates NAME of DRAWING when condition", "what it plugs into, for some vehicles"),
            entry("CavityFact", "terminal 7 is PART, seal, plug; map 7 to 3",
                    "what a cavity holds besides wires, or which cavity of the mate it meets"),
            entry("ForFact", "for DRAWING, DRAWING", "the drawings whose vehicles a connector is for"),
            entry("Stud", "stud NAME at PLACE via BRANCH on GROUND", "a ground point"),
            entry("Placed", "fit NAME is PART at BREAKOUT, or on RUN at 100 mm",
                    "a covering, clip, grommet or other part on the harness"),
            entry("Circuit", "circuit NUMBER \"title\" COLOUR {",
                    "one electrical function with its number and colour"),
            entry("Wire", "wire NAME 18 ga from J1:7 to S4", "one cut piece with two ends"),
            entry("SizeFact", "size 18 ga when condition", "the size of a wire, for some vehicles"),
            entry("ColourFact", "colour BU/RD when condition", "the colour, for some vehicles"),
            entry("CableFact", "cable PART", "the kind of cable: of the wire, or of every wire that states none"),
            entry("EndFact", "from J1:7 when condition, or to", "an end of the wire, for some vehicles"),
            entry("LengthFact", "length 250 mm", "the length of the wire where the route does not give it"),
            entry("LegendFact", "legend \"text\"", "what is printed on the wire"),
            entry("AsFactory", "as factory because \"reason\"", "what the factory did is kept, and why"),
            entry("Splice", "splice NAME at BREAKOUT, or on RUN at 100 mm, by METHOD",
                    "where three or more wires of a circuit join"),
            entry("Origin", "stands for NUMBER COLOUR of DRAWING",
                    "which factory circuit it stands for, where numbers conflict"),
            entry("Covers", "covers DRAWING, DRAWING", "the drawings that this harness replaces"),
            entry("LimitSetting", "serviceLoop 40 mm at PLACE",
                    "a length or limit of making and fitting, for all or for one place"),
            entry("MadeSetting", "branches made -0 mm +25 mm", "how exactly branches or breakouts are made"),
            entry("Cap", "cap BRANCH at PLACE within 400 mm when condition",
                    "a branch that some vehicles do not use, and where it is parked"),
            entry("ObjectiveOrder", "minimise excess, copper, length", "what planning minimises, in that order"),
            entry("Kit", "kit NAME \"title\" revision \"D\" of PLATFORM {",
                    "one box: harnesses and loose parts at one revision"),
            entry("Contains", "contains HARNESS quantity 2 when condition", "what is in the box"),
            entry("Sold", "sold revision \"C\" at \"tag\"", "a revision that was sold, and so is frozen"),
            entry("Needs", "needs KIT revision \"C\" or later", "the kit that an add-on needs"),
            entry("Waiver", "waive NAME: RULE on HARNESS:ELEMENT because \"reason\" until 2027-06-30",
                    "a finding that somebody accepts"),
            entry("Practice", "practice NAME of PLATFORM {", "severities and limits of the shop's own"),
            entry("Treatment", "treat RULE as warning because \"reason\"",
                    "what findings of a rule weigh here: error, warning, note or silent"),
            entry("OwnLimit", "limit NAME 300 mm source \"where it comes from\"",
                    "a limit of the shop's own instead of the usual one"));

    private Constructs() {
    }

    private static Map.Entry<String, Construct> entry(String rule, String form, String meaning) {
        return Map.entry(rule, new Construct(form, meaning));
    }

    /** The construct of a line, by the name of its rule in the grammar. */
    public static Optional<Construct> of(String rule) {
        return Optional.ofNullable(KNOWN.get(rule));
    }
}
