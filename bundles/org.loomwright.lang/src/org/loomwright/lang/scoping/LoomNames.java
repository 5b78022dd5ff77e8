// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.naming.IQualifiedNameProvider;
import org.eclipse.xtext.naming.QualifiedName;
import org.loomwright.model.loom.Named;
import org.loomwright.model.loom.Part;
import org.loomwright.model.loom.Platform;
import org.loomwright.model.loom.TopElement;
import org.loomwright.model.loom.Wiring;

/**
 * The names by which other files know things: top-level elements and catalogue parts by their own, what belongs to a
 * platform, drawing or harness by its owner's and its own.
 */
public class LoomNames extends IQualifiedNameProvider.AbstractImpl {

    @Override
    public QualifiedName getFullyQualifiedName(EObject object) {
        if (!(object instanceof Named named) || isNothing(named)) {
            return null;
        }
        if (named instanceof TopElement || named instanceof Part) {
            return QualifiedName.create(named.getName());
        }
        Named owner = EcoreUtil2.getContainerOfType(named, Platform.class);
        owner = owner == null ? EcoreUtil2.getContainerOfType(named, Wiring.class) : owner;
        return owner == null || isNothing(owner) ? null : QualifiedName.create(owner.getName(), named.getName());
    }

    private static boolean isNothing(Named named) {
        return named.getName() == null || named.getName().isEmpty();
    }
}
