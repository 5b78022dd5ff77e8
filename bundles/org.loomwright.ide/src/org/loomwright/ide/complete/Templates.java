// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.harness.Span;
import org.loomwright.ide.hover.Constructs;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Slot;
import org.loomwright.lang.words.WordReader;

/** Each construct of the language as a whole, with fields to fill in; offered where a line of it can begin. */
public final class Templates {

    /** Fields stand in braces behind a dollar sign, with what they show at first; the one that is empty comes last. */
    private static final Pattern FIELD = Pattern.compile("\\$\\{([^}]*)}");

    /** A line with the construct and the words that it begins with, then the text, with {@code @} for that word. */
    private static final String ALL = """
            #Platform platform
            @ ${name} "${title}" {
                supply ${12} V ${negative} ground
                years ${1964} .. ${1971}
                place ${bulkhead}
                position ${frontWiring}
                ${}
            }
            #Supply supply
            @ ${12} V ${negative} ground
            #Years years
            @ ${1964} .. ${1971}
            #YearBreak break
            @ ${name} in ${1967} "${from car 12345}"
            #Group group
            @ ${name} of ${one}, ${other}
            #Option option upgrade
            @ ${name} "${title}"
            #Never never
            @ ${condition}
            #Requirement require
            @ ${needed} when ${condition}
            #Zone zone
            @ ${name} ambient ${80} C ${dry}
            #Place place
            @ ${name} "${title}" in ${zone}
            #Position position
            @ ${name} "${title}"
            #GroundNode ground
            @ ${name} "${title}"
            #Strap strap
            @ ${name} from ${ground} to ${other} ${5} mohm
            #Device device
            @ ${name} "${title}" is ${part} at ${place} on ${ground}
            #Mode mode
            @ ${name} "${title}" {
                set ${device} to ${state}
                ${}
            }
            #ModeSetting set
            @ ${device} to ${state}
            #Note note
            @ "${text}"
            #Catalogue catalogue
            @ ${name} "${title}" {
                ${}
            }
            #Part cable
            @ ${name} "${title}" {
                temperature ${80} C source "${where from}"
                size ${18} ga diameter ${2.2} mm source "${where from}"
                ${}
            }
            #Part fusibleLink
            @ ${name} "${title}" {
                size ${18} ga source "${where from}"
                length ${200} mm
                ${}
            }
            #Part resistorCable
            @ ${name} "${title}" {
                resistance ${1.8} ohm source "${where from}"
                ${}
            }
            #Part terminal
            @ ${name} "${title}" {
                family ${family}
                takes ${0.5} mm2 .. ${1.0} mm2 source "${where from}"
                ${}
            }
            #Part seal
            @ ${name} "${title}" {
                fits ${1.6} mm .. ${2.4} mm source "${where from}"
                ${}
            }
            #Part plug covering clip spliceMethod
            @ ${name} "${title}" {
                ${}
            }
            #Part housing
            @ ${name} "${title}" {
                family ${family}
                cavities ${1} .. ${12}
                ${}
            }
            #Part opening
            @ ${name} "${title}" {
                bore ${25} mm source "${where from}"
                ${}
            }
            #Part fuse breaker
            @ ${name} "${title}" {
                pins ${1} .. ${2}
                rating ${10} A source "${where from}"
                protects ${1} to ${2}
                ${}
            }
            #Part relay flasher
            @ ${name} "${title}" {
                pins ${85}, ${86}, ${30}, ${87}
                ${}
            }
            #Part lamp motor load
            @ ${name} "${title}" {
                pins ${plus}, ${minus}
                voltage ${12.8} V source "${where from}"
                current ${2.1} A source "${where from}"
                ${}
            }
            #Part switch
            @ ${name} "${title}" {
                pins ${1}, ${2}
                states ${off}, ${on}
                joins ${1} to ${2} while ${on}
                ${}
            }
            #Part source
            @ ${name} "${title}" {
                pins ${plus}, ${minus}
                voltage ${12} V source "${where from}"
                ${}
            }
            #Part assembly
            @ ${name} "${title}" {
                pins ${1}, ${2}
                joins ${1} to ${2}
                ${}
            }
            #Part colour
            @ ${name} {
                called "${words}"
            }
            #FigureFact rating current start stall breaking
            @ ${10} A source "${where from}"
            #FigureFact voltage pullIn dropOut
            @ ${12} V source "${where from}"
            #FigureFact power
            @ ${45} W source "${where from}"
            #FigureFact resistance
            @ ${5} mohm source "${where from}"
            #FigureFact temperature shortTime
            @ ${80} C source "${where from}"
            #FigureFact diameter bore thickness strip height length radius
            @ ${2.5} mm source "${where from}"
            #FigureFact fits
            @ ${1.6} mm .. ${2.4} mm source "${where from}"
            #FigureFact mass
            @ ${12} g source "${where from}"
            #FigureFact takes
            @ ${0.5} mm2 .. ${1.0} mm2 source "${where from}"
            #FigureFact pull
            @ ${60} N source "${where from}"
            #WordFact family keying type polarity
            @ ${name}
            #WordFact basis
            @ ${continuous}
            #WordFact gender
            @ ${tab}
            #WordFact called figuresFrom
            @ "${words}"
            #SizeRow size
            @ ${18} ga diameter ${2.2} mm source "${where from}"
            #PinRow cavities pins
            @ ${1} .. ${12}
            #Join joins
            @ ${1} to ${2} while ${on}
            #Join protects
            @ ${1} to ${2} through ${10} A
            #StateRow states
            @ ${off}, ${on}
            #Drawing drawing
            @ ${name} "${title}" of ${platform} fills ${position} when ${condition} {
                sheet "${number}" issue "${A}"
                datum ${place}
                trunk ${main} {
                    breakout ${breakout} at ${300} mm
                }
                ${}
            }
            #Harness harness
            @ ${name} "${title}" of ${platform} fills ${position} {
                covers ${drawing}
                serviceLoop ${40} mm
                datum ${place}
                trunk ${main} {
                    breakout ${breakout} at ${300} mm
                }
                ${}
            }
            #Sheet sheet
            @ "${number}" issue "${A}"
            #DefaultTolerance tolerance
            @ ± ${10} mm
            #CableFact cable
            @ ${part}
            #Datum datum
            @ ${place}
            #Trunk trunk
            @ ${name} {
                breakout ${breakout} at ${300} mm
                ${}
            }
            #Branch branch
            @ ${name} from ${breakout} to ${place} ${180} mm
            #Breakout breakout
            @ ${name} at ${300} mm
            #Barrier barrier
            @ ${name} at ${60} mm
            #Bend bend
            @ ${name} at ${300} mm radius ${25} mm
            #Slack slack
            @ before ${breakout} at most ${20} mm
            #Connector connector
            @ ${name} "${title}" on ${branch} is ${housing} {
                terminal ${1} is ${terminal}
                ${}
            }
            #IsFact is
            @ ${part} when ${condition}
            #MatesFact mates
            @ ${name} when ${condition}
            #CavityFact map
            @ ${7} to ${3}
            #CavityFact terminal seal plug
            @ ${1} is ${part}
            #ForFact for
            @ ${drawing}
            #Stud stud
            @ ${name} via ${branch} on ${ground}
            #Placed fit
            @ ${name} is ${part} on ${run} at ${100} mm
            #Circuit circuit
            @ ${number} "${title}" ${BK} {
                wire ${a} ${18} ga from ${J1}:${1} to ${J2}:${2}
                ${}
            }
            #Wire wire
            @ ${a} ${18} ga from ${J1}:${1} to ${J2}:${2}
            #SizeFact size
            @ ${18} ga when ${condition}
            #ColourFact colour
            @ ${BU}/${RD} when ${condition}
            #EndFact from to
            @ ${J1}:${1} when ${condition}
            #LengthFact length
            @ ${250} mm
            #LegendFact legend
            @ "${text}"
            #AsFactory as
            @ factory because "${reason}"
            #Splice splice
            @ ${name} at ${breakout}
            #Origin stands
            @ for ${number} ${BK} of ${drawing}
            #Covers covers
            @ ${drawing}
            #LimitSetting serviceLoop movement excessAtMost cuttingGrid spacingAtLeast doublingBackAtMost
            @ ${40} mm
            #MadeSetting branches breakouts
            @ made ± ${5} mm
            #Cap cap
            @ ${branch} at ${place} within ${400} mm when ${condition}
            #ObjectiveOrder minimise
            @ ${excess}, ${copper}, ${length}
            #Kit kit
            @ ${name} "${title}" revision "${A}" of ${platform} {
                contains ${harness}
                ${}
            }
            #Contains contains
            @ ${item} quantity ${1}
            #Sold sold
            @ revision "${A}" at "${tag}"
            #Needs needs
            @ ${kit} revision "${A}" or later
            #Waiver waive
            @ ${rule} on ${harness}:${element} because "${reason}" until ${2030}-${01}-${31}
            #Practice practice
            @ ${name} "${title}" of ${platform} {
                ${}
            }
            #Treatment treat
            @ ${rule} as ${warning} because "${reason}"
            #OwnLimit limit
            @ ${name} ${300} mm source "${where from}"
            """;

    private static final Map<String, Template> KNOWN = read();

    private Templates() {
    }

    /**
     * One of them.
     *
     * @param word    what it begins with
     * @param meaning what it says, a few words
     * @param pieces  texts and fields in turn, a text first; a field is what it shows at first, the last stop is empty
     */
    public record Template(String word, String meaning, List<String> pieces) {

        public Template {
            pieces = List.copyOf(pieces);
        }

        /** The whole of it as it stands before anything is filled in. */
        public String text() {
            return String.join("", pieces);
        }

        /** A snippet of the Language Server Protocol (3.17, "Snippet Syntax"). */
        public String snippet() {
            StringBuilder snippet = new StringBuilder();
            int stop = 0;
            for (int i = 0; i < pieces.size(); i++) {
                String piece = pieces.get(i).replace("\\", "\\\\").replace("$", "\\$");
                if (i % 2 == 0) {
                    snippet.append(piece);
                } else {
                    snippet.append(piece.isEmpty() ? "$0" : "${" + ++stop + ":" + piece + "}");
                }
            }
            return snippet.toString();
        }
    }

    /**
     * A template that fits a place.
     *
     * @param template which
     * @param where    what is replaced by it: what was typed of its first word
     */
    public record Fitting(Template template, Span where) {
    }

    private static Map<String, Template> read() {
        Map<String, Template> known = new LinkedHashMap<>();
        for (String entry : ALL.substring(1).split("\n#")) {
            int end = entry.indexOf('\n');
            String[] head = entry.substring(0, end).split(" ");
            String meaning = Constructs.of(head[0]).map(Constructs.Construct::meaning).orElse("");
            for (int i = 1; i < head.length; i++) {
                String text = entry.substring(end + 1).stripTrailing().replace("@", head[i]);
                known.put(head[0] + " " + head[i], new Template(head[i], meaning, pieces(text)));
            }
        }
        return known;
    }

    private static List<String> pieces(String text) {
        List<String> pieces = new ArrayList<>();
        Matcher field = FIELD.matcher(text);
        int at = 0;
        while (field.find()) {
            pieces.add(text.substring(at, field.start()));
            pieces.add(field.group(1));
            at = field.end();
        }
        pieces.add(text.substring(at));
        return pieces;
    }

    /** Those that can begin at a place, in the order of the grammar; none where something follows on the line. */
    public static List<Fitting> at(Moment moment, String file, int offset) {
        String text = moment.text(file);
        int end = text.indexOf('\n', offset);
        if (moment.words(file).inComment(offset) || !text.substring(offset, end < 0 ? text.length() : end).isBlank()) {
            return List.of();
        }
        WordReader.Expected expected = moment.expected(file, offset);
        if (!expected.before().isEmpty()) {
            return List.of();
        }
        String prefix = expected.prefix().toLowerCase(Locale.ROOT);
        Span where = moment.lines(file).span(expected.offset(), expected.prefix().length());
        List<Fitting> fitting = new ArrayList<>();
        for (Slot slot : expected.slots()) {
            Template template = KNOWN.get(slot.rule() + " " + slot.word());
            if (template != null && slot.sort() == Slot.Sort.KEYWORD
                    && template.word().toLowerCase(Locale.ROOT).startsWith(prefix)) {
                fitting.add(new Fitting(template, where));
            }
        }
        return List.copyOf(fitting);
    }
}
