// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.eclipse.emf.common.util.URI;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.IResourceServiceProvider;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.util.CancelIndicator;
import org.eclipse.xtext.validation.CheckMode;
import org.eclipse.xtext.validation.IResourceValidator;
import org.eclipse.xtext.validation.Issue;
import org.junit.jupiter.api.Test;
import org.loomwright.lang.Corpus;
import org.loomwright.model.loom.Branch;
import org.loomwright.model.loom.Connector;
import org.loomwright.model.loom.End;
import org.loomwright.model.loom.Pick;
import org.loomwright.model.loom.Place;
import org.loomwright.model.loom.Splice;

/** Two files in one resource set: names that are found, one that is not, and files that change under the other. */
class LinkingTest {
    private static final String PLATFORM = """
            platform orrin "Orrin 1200" {
                group body of saloon, coupe
                upgrade fan
                break lateNose in 1967
                years 1964 .. 1971
                zone cabin
                place bulkhead in cabin
                place headlampLeft
                position frontWiring
                ground shell
                ground engine
                strap s from shell to engine
                device battery is battery12 at bulkhead on shell
                mode off
                mode crank extends off
            }
            catalogue parts {
                source battery12
                cable gpt
                housing bulkhead12 {
                    length 3 mm when fan
                }
                spliceMethod crimped
                covering tape
            }
            drawing dash of orrin {
                connector J7 at bulkhead
            }
            """;
    private static final String DRAWING = """
            drawing front of orrin fills frontWiring when saloon and not (fan or lateNose) {
                cable gpt
                datum bulkhead
                trunk main {
                    breakout leftWing at 12 in
                    breakout rightWing after leftWing at 2 in
                    slack before rightWing at most 3 mm
                }
                branch bHead from leftWing to headlampLeft when coupe
                branch bBack from bulkhead to headlampLeft
                connector J1 at bulkhead is bulkhead12 mates J7 of dash
                connector H1 on bHead
                connector X1 mates J1
                stud G1 at bulkhead via bHead on engine
                circuit 12 {
                    splice S1 at rightWing by crimped
                    splice S2 on main at 3 in
                    wire a 18 ga from J1:7 to S1
                    wire b 18 ga from S1 to battery:1
                    wire c 18 ga from G1 to H1:2 cable gpt
                    stands for 11 of dash
                }
                fit t1 is tape at bHead to on bBack at 2 in
            }
            harness ours of orrin {
                covers front, dash
                cap bHead when fan
                branch bHead from bulkhead to headlampLeft
            }
            kit k of orrin when fan {
                contains ours
                contains tape when coupe
            }
            waive some-rule on front:12 because "x" when fan
            """;

    private final XtextResourceSet set = Corpus.injector().getInstance(XtextResourceSet.class);

    private XtextResource add(String name, String text) throws IOException {
        XtextResource resource = (XtextResource) Corpus.injector().getInstance(IResourceFactory.class)
                .createResource(URI.createURI("memory:/" + name));
        set.getResources().add(resource);
        resource.load(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), Map.of());
        return resource;
    }

    private static List<String> issues(XtextResource resource) {
        List<Issue> issues = Corpus.injector().getInstance(IResourceValidator.class).validate(resource, CheckMode.ALL,
                CancelIndicator.NullImpl);
        return issues.stream().map(issue -> issue.getLineNumber() + ":" + issue.getColumn() + " " + issue.getCode()
                + " " + issue.getMessage()).toList();
    }

    @Test
    void everyNameIsFound() throws IOException {
        XtextResource platform = add("platform.loom", PLATFORM);
        XtextResource drawing = add("drawing.loom", DRAWING);
        assertEquals(List.of(), issues(platform));
        assertEquals(List.of(), issues(drawing));
        Splice splice = EcoreUtil2.getAllContentsOfType(drawing.getContents().getFirst(), Splice.class).getFirst();
        List<End> ends = EcoreUtil2.getAllContentsOfType(drawing.getContents().getFirst(), End.class);
        assertSame(splice, ends.get(1).getTarget());
        assertSame(platform, ends.get(3).getTarget().eResource());
        Connector first = EcoreUtil2.getAllContentsOfType(drawing.getContents().getFirst(), Connector.class).getFirst();
        assertSame(platform, first.getMate().eResource());
    }

    @Test
    void oneNameThatNothingHas() throws IOException {
        add("platform.loom", PLATFORM);
        XtextResource drawing = add("drawing.loom", DRAWING.replace("to headlampLeft when", "to headlampLeff when"));
        assertEquals(List.of("9:35 name-unknown there is no place named \"headlampLeff\""), issues(drawing));
    }

    @Test
    void filesMayComeInAnyOrder() throws IOException {
        XtextResource drawing = add("drawing.loom", DRAWING);
        add("platform.loom", PLATFORM);
        assertEquals(List.of(), issues(drawing));
    }

    @Test
    void breakoutsHideBranchesAndBranchesHidePlaces() throws IOException {
        XtextResource resource = add("all.loom", """
                platform p {
                    place a
                    place b
                    place c
                }
                drawing d of p {
                    trunk t {
                        breakout a at 1 mm
                    }
                    branch b from a to c
                    branch x from b to c
                    branch y from c to c
                }
                """);
        assertEquals(List.of(), issues(resource));
        List<String> from = EcoreUtil2.getAllContentsOfType(resource.getContents().getFirst(), Branch.class).stream()
                .map(branch -> branch.getFrom().eClass().getName()).toList();
        assertEquals(List.of("Breakout", "Branch", "Place"), from);
    }

    @Test
    void aChangeOfTheOtherFileIsSeen() throws Exception {
        XtextResource platform = add("platform.loom", PLATFORM);
        XtextResource drawing = add("drawing.loom", DRAWING);
        assertEquals(List.of(), issues(drawing));
        platform.reparse(PLATFORM.replace("place headlampLeft", "place lampLeft")
                .replace("upgrade fan", "upgrade blower"));
        drawing.relink();
        List<String> issues = new ArrayList<>(issues(drawing));
        assertEquals(List.of("1:63 name-unknown there is no choice named \"fan\"",
                "9:35 name-unknown there is no place named \"headlampLeft\"",
                "10:35 name-unknown there is no place named \"headlampLeft\"",
                "27:20 name-unknown there is no choice named \"fan\"",
                "28:35 name-unknown there is no place named \"headlampLeft\"",
                "30:21 name-unknown there is no choice named \"fan\"",
                "34:46 name-unknown there is no choice named \"fan\""), issues);
        platform.reparse(PLATFORM);
        drawing.relink();
        assertEquals(List.of(), issues(drawing));
        Place place = EcoreUtil2.getAllContentsOfType(drawing.getContents().getFirst(), Branch.class).getFirst()
                .getTo();
        assertSame(platform, place.eResource());
        Pick pick = EcoreUtil2.getAllContentsOfType(drawing.getContents().getFirst(), Pick.class).getFirst();
        assertSame(platform, pick.getChoice().eResource());
    }

    @Test
    void theIndexHoldsWhatOtherFilesMayName() throws IOException {
        XtextResource drawing = add("drawing.loom", DRAWING);
        XtextResource platform = add("platform.loom", PLATFORM);
        assertEquals(List.of("front", "front.J1", "front.H1", "front.X1", "ours", "k"), exported(drawing));
        assertEquals(List.of("orrin", "orrin.body", "orrin.saloon", "orrin.coupe", "orrin.fan", "orrin.lateNose",
                "orrin.cabin", "orrin.bulkhead", "orrin.headlampLeft", "orrin.frontWiring", "orrin.shell",
                "orrin.engine", "orrin.s", "orrin.battery", "orrin.off", "orrin.crank", "parts", "battery12", "gpt",
                "bulkhead12",
                "crimped", "tape", "dash", "dash.J7"), exported(platform));
    }

    private static List<String> exported(XtextResource resource) {
        Iterable<IEObjectDescription> all = Corpus.injector().getInstance(IResourceServiceProvider.class)
                .getResourceDescriptionManager().getResourceDescription(resource).getExportedObjects();
        return StreamSupport.stream(all.spliterator(), false).map(IEObjectDescription::getName)
                .map(QualifiedName::toString).toList();
    }

    @Test
    void problemsOfTheTextAreErrorsOfTheResource() throws IOException {
        XtextResource resource = add("wrong.loom", "platform p {\n    zonne x\n    place\n");
        assertEquals(List.of("2:5 null \"zonne\" cannot start a line in a platform; did you mean \"zone\"?",
                "3:10 null a name is expected after \"place\"",
                "4:1 null } is missing at the end of the file: the block of line 1 is still open"), issues(resource));
    }

    @Test
    void whatIsNestedTooDeepIsAnErrorToo() throws IOException {
        XtextResource resource = add("deep.loom", "platform p {\n".repeat(30));
        assertEquals(1, resource.getErrors().size());
        assertEquals("platform p {\n".repeat(30), resource.getParseResult().getRootNode().getText());
    }
}
