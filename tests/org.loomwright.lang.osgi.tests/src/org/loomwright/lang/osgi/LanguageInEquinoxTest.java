// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.osgi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import com.google.inject.Injector;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.core.runtime.Platform;
import org.eclipse.emf.common.util.URI;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.resource.IResourceFactory;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.junit.jupiter.api.Test;
import org.loomwright.lang.LoomStandaloneSetup;
import org.loomwright.model.loom.LoomFile;
import org.loomwright.model.loom.LoomPackage;

/** Loads the language as a bundle and reads a small platform. */
class LanguageInEquinoxTest {

    @Test
    void runsInsideTheFramework() {
        assertNotNull(Platform.getBundle("org.loomwright.lang"));
    }

    @Test
    void theExtensionRegistryKnowsTheMetamodel() {
        // asked of the registry, not of EMF: LoomPackage registers itself with EMF as soon as its class is loaded
        List<String> classes = Stream.of(Platform.getExtensionRegistry()
                        .getConfigurationElementsFor("org.eclipse.emf.ecore.generated_package"))
                .filter(e -> LoomPackage.eNS_URI.equals(e.getAttribute("uri")))
                .map(e -> e.getAttribute("class"))
                .toList();
        assertEquals(List.of(LoomPackage.class.getName()), classes);
    }

    @Test
    void readsAPlatform() throws Exception {
        Resource resource = read("""
                platform orrin "Orrin 1200" {
                    supply 12 V negative ground
                    years 1964 .. 1971
                }
                """);
        assertEquals(List.of(), resource.getErrors());
        LoomFile file = assertInstanceOf(LoomFile.class, resource.getContents().get(0));
        assertEquals(1, file.getElements().size());
    }

    @Test
    void objectsToAWrongLine() throws Exception {
        assertFalse(read("platform orrin {\n    supply twelve\n}\n").getErrors().isEmpty());
    }

    private static Resource read(String text) throws Exception {
        Injector injector = new LoomStandaloneSetup().createInjectorAndDoEMFRegistration();
        XtextResourceSet set = injector.getInstance(XtextResourceSet.class);
        IResourceFactory resources = injector.getInstance(IResourceFactory.class);
        Resource resource = resources.createResource(URI.createURI("memory:/test.loom"));
        set.getResources().add(resource);
        resource.load(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), Map.of());
        return resource;
    }
}
