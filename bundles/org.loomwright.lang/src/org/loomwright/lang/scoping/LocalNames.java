// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import com.google.inject.Inject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.emf.common.util.TreeIterator;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.resource.EObjectDescription;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.scoping.IScope;
import org.eclipse.xtext.scoping.impl.MapBasedScope;
import org.eclipse.xtext.util.IResourceScopeCache;
import org.eclipse.xtext.util.Tuples;
import org.loomwright.model.loom.Condition;
import org.loomwright.model.loom.Named;
import org.loomwright.model.loom.WireFact;

/**
 * The names within one platform, drawing or harness, by the sort of thing that they are of. Kept with the resource that
 * holds the owner, so that a change of that resource, and not only of the one that asks, makes them anew.
 */
class LocalNames {
    @Inject
    private IResourceScopeCache cache;

    /** Returns the names of one sort within an owner; what they hide is the parent's. */
    IScope of(EObject owner, Class<? extends Named> sort, IScope parent) {
        if (owner == null || owner.eResource() == null) {
            return parent;
        }
        List<IEObjectDescription> names = cache.get(Tuples.pair(owner, LocalNames.class), owner.eResource(),
                () -> collect(owner)).getOrDefault(sort, List.of());
        return names.isEmpty() ? parent : MapBasedScope.createScope(parent, names);
    }

    private static Map<Class<? extends Named>, List<IEObjectDescription>> collect(EObject owner) {
        Map<Class<? extends Named>, List<IEObjectDescription>> names = new LinkedHashMap<>();
        for (TreeIterator<EObject> all = owner.eAllContents(); all.hasNext();) {
            EObject each = all.next();
            if (each instanceof Condition || each instanceof WireFact) {
                all.prune();
            } else if (each instanceof Named named && named.getName() != null && !named.getName().isEmpty()) {
                IEObjectDescription name = EObjectDescription.create(QualifiedName.create(named.getName()), named);
                for (Class<? extends Named> sort : LoomScopeProvider.SORTS) {
                    if (sort.isInstance(named)) {
                        names.computeIfAbsent(sort, key -> new ArrayList<>()).add(name);
                    }
                }
            }
        }
        return names;
    }
}
