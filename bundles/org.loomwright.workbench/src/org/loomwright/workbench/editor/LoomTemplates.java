// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.templates.DocumentTemplateContext;
import org.eclipse.jface.text.templates.GlobalTemplateVariables;
import org.eclipse.jface.text.templates.Template;
import org.eclipse.jface.text.templates.TemplateContextType;
import org.eclipse.jface.text.templates.TemplateProposal;

/** Templates for the constructs of the language, offered at the beginning of a line. */
public final class LoomTemplates {

    private static final String CONTEXT = "org.loomwright.workbench.loom";

    private static final List<Template> ALL = List.of(
            template("platform", "a family of vehicles", """
                    platform ${name} "${title}" {
                        supply 12 V negative ground
                        years ${first} .. ${last}
                        place ${bulkhead} "${words}"
                        position ${position}
                        ${cursor}
                    }"""),
            template("drawing", "what the factory made", """
                    drawing ${name} "${title}" of ${platform} fills ${position} {
                        datum ${place}
                        trunk main {
                            breakout ${breakout} at ${station} mm
                        }
                        ${cursor}
                    }"""),
            template("harness", "what we make", """
                    harness ${name} "${title}" of ${platform} fills ${position} {
                        covers ${drawings}
                        serviceLoop 40 mm
                        datum ${place}
                        trunk main {
                            breakout ${breakout} at ${station} mm
                        }
                        ${cursor}
                    }"""),
            template("trunk", "a trunk from the datum", """
                    trunk ${name} {
                        breakout ${breakout} at ${station} mm
                    }"""),
            template("branch", "a branch from a breakout", "branch ${name} from ${breakout} to ${place} ${length} mm"),
            template("connector", "a connector with its terminals", """
                    connector ${name} "${title}" on ${branch} is ${housing} {
                        terminal ${cavity} is ${terminal}
                    }"""),
            template("circuit", "a circuit with a wire", """
                    circuit ${number} "${title}" ${colour} {
                        wire a ${size} ga from ${from}:${pin} to ${to}:${pin2}
                    }"""),
            template("wire", "a wire of a circuit", "wire ${name} ${size} ga from ${from}:${pin} to ${to}:${pin2}"),
            template("kit", "what is in the box", """
                    kit ${name} "${title}" revision "${revision}" of ${platform} {
                        contains ${harness}
                    }"""),
            template("catalogue", "parts with their figures", """
                    catalogue ${name} "${title}" {
                        ${cursor}
                    }"""),
            template("cable", "a cable of a catalogue with a size", """
                    cable ${name} "${title}" {
                        temperature ${temperature} C
                        size ${size} ga diameter ${diameter} mm
                    }"""),
            template("fuse", "a fuse of a catalogue", """
                    fuse ${name} "${title}" {
                        family ${family}
                        basis continuous
                        rating ${rating} A
                        pins line, load
                        protects line to load
                    }"""),
            template("lamp", "a lamp of a catalogue", """
                    lamp ${name} "${title}" {
                        voltage ${voltage} V
                        power ${power} W
                        pins 1, 2
                    }"""),
            template("switch", "a switch of a catalogue", """
                    switch ${name} "${title}" {
                        pins 30, 15
                        states off, run
                        joins 30 to 15 through ${ohms} mohm while run
                    }"""),
            template("zone", "a region with one temperature", "zone ${name} \"${title}\" ambient ${temperature} C dry"),
            template("place", "a named spot in the vehicle", "place ${name} \"${title}\" in ${zone}"),
            template("group", "a choice of which each vehicle has one", "group ${name} of ${one}, ${other}"),
            template("option", "what the factory fitted on request", "option ${name} \"${title}\""),
            template("upgrade", "what an owner adds later", "upgrade ${name} \"${title}\""),
            template("never", "what no vehicle has together", "never ${one} and ${other}"),
            template("mode", "a set of switch positions", """
                    mode ${name} "${title}" {
                        set engine to stopped
                        ${cursor}
                    }"""),
            template("device", "a device at its place", "device ${name} \"${title}\" is ${part} at ${place}"),
            template("stud", "a stud at the end of a branch", "stud ${name} at ${place} via ${branch}"),
            template("splice", "a splice of a circuit", "splice ${name} on ${branch} at ${station} mm"),
            template("practice", "how a shop judges", """
                    practice ${name} "${title}" {
                        treat ${rule} as note because "${reason}"
                    }"""),
            template("waive", "a finding that somebody accepts",
                    "waive ${rule} on ${harness}:${wire} because \"${reason}\""));

    /** Returns all of them. */
    public static List<Template> all() {
        return ALL;
    }

    private static Template template(String name, String words, String pattern) {
        return new Template(name, words, CONTEXT, pattern, false);
    }

    List<ICompletionProposal> at(ITextViewer viewer, int offset) {
        IDocument document = viewer.getDocument();
        try {
            int line = document.getLineInformationOfOffset(offset).getOffset();
            String before = document.get(line, offset - line);
            String word = before.stripLeading();
            if (!word.chars().allMatch(Character::isLetter)) {
                return List.of();
            }
            int start = offset - word.length();
            String indent = before.substring(0, before.length() - word.length());
            TemplateContextType type = new TemplateContextType(CONTEXT);
            type.addResolver(new GlobalTemplateVariables.Cursor());
            return ALL.stream().filter(each -> each.getName().startsWith(word)).map(each -> proposal(each, indent,
                    new DocumentTemplateContext(type, document, start, word.length()), start, offset)).toList();
        } catch (BadLocationException e) {
            return List.of();
        }
    }

    private static ICompletionProposal proposal(Template template, String indent, DocumentTemplateContext context,
            int start, int offset) {
        Template indented = new Template(template.getName(), template.getDescription(), CONTEXT,
                template.getPattern().replace("\n", "\n" + indent), false);
        return new TemplateProposal(indented, context, new Region(start, offset - start), null);
    }
}
