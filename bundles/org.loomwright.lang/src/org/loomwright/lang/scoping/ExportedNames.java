// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.resource.impl.DefaultResourceDescriptionStrategy;
import org.eclipse.xtext.util.IAcceptor;
import org.loomwright.model.loom.Catalogue;
import org.loomwright.model.loom.Connector;
import org.loomwright.model.loom.Group;
import org.loomwright.model.loom.LoomFile;
import org.loomwright.model.loom.Named;
import org.loomwright.model.loom.Part;
import org.loomwright.model.loom.Platform;
import org.loomwright.model.loom.TopElement;
import org.loomwright.model.loom.Wiring;

/**
 * Puts into the index only what another file may name: top-level elements, what belongs to a platform, catalogue parts,
 * and connectors, which mate across drawings. Wires, splices and breakouts stay inside.
 */
public class ExportedNames extends DefaultResourceDescriptionStrategy {

    @Override
    public boolean createEObjectDescriptions(EObject object, IAcceptor<IEObjectDescription> acceptor) {
        boolean exported = object instanceof Named && (object instanceof TopElement || object instanceof Part
                || object instanceof Connector || EcoreUtil2.getContainerOfType(object, Platform.class) != null);
        if (exported) {
            super.createEObjectDescriptions(object, acceptor);
        }
        return object instanceof LoomFile || object instanceof Platform || object instanceof Catalogue
                || object instanceof Wiring || object instanceof Group;
    }
}
