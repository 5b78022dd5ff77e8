// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import com.google.inject.Injector;
import org.eclipse.emf.ecore.EPackage;
import org.loomwright.model.loom.LoomPackage;

/**
 * Sets the language up where no extension registry runs: the command line and plain tests.
 *
 * <p>The metamodel is registered before the injector is made, since the validator asks for it once while it is made.
 */
public class LoomStandaloneSetup extends LoomStandaloneSetupGenerated {

    /** Sets the language up once for the whole process. */
    public static void doSetup() {
        new LoomStandaloneSetup().createInjectorAndDoEMFRegistration();
    }

    @Override
    public Injector createInjectorAndDoEMFRegistration() {
        EPackage.Registry.INSTANCE.putIfAbsent(LoomPackage.eNS_URI, LoomPackage.eINSTANCE);
        return super.createInjectorAndDoEMFRegistration();
    }
}
