// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import com.google.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.naming.QualifiedName;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.eclipse.xtext.resource.IEObjectDescription;
import org.eclipse.xtext.resource.IResourceDescription;
import org.eclipse.xtext.resource.impl.AliasedEObjectDescription;
import org.eclipse.xtext.scoping.IGlobalScopeProvider;
import org.eclipse.xtext.scoping.IScope;
import org.eclipse.xtext.scoping.impl.MapBasedScope;
import org.eclipse.xtext.scoping.impl.SelectableBasedScope;
import org.loomwright.model.loom.Branch;
import org.loomwright.model.loom.Breakout;
import org.loomwright.model.loom.Choice;
import org.loomwright.model.loom.Device;
import org.loomwright.model.loom.Endable;
import org.loomwright.model.loom.GroundNode;
import org.loomwright.model.loom.Kit;
import org.loomwright.model.loom.LoomPackage;
import org.loomwright.model.loom.Mateable;
import org.loomwright.model.loom.Mode;
import org.loomwright.model.loom.Named;
import org.loomwright.model.loom.Place;
import org.loomwright.model.loom.Platform;
import org.loomwright.model.loom.Position;
import org.loomwright.model.loom.Run;
import org.loomwright.model.loom.Wiring;
import org.loomwright.model.loom.Zone;

/**
 * What may be named by each sort of reference.
 *
 * <p>A platform's own things are found through the platform that a drawing, harness or kit names in its head. That one
 * is looked up by its name each time, never through a link made earlier, which may lead to what the platform's file
 * held before it was changed.
 */
public class LoomScopeProvider extends AbstractLoomScopeProvider {
    /** The sorts of names that are looked for within an owner. */
    static final List<Class<? extends Named>> SORTS = List.of(Zone.class, Place.class, Position.class, GroundNode.class,
            Mode.class, Choice.class, Device.class, Breakout.class, Branch.class, Run.class, Endable.class,
            Mateable.class);

    @Inject
    private IGlobalScopeProvider global;

    @Inject
    private IResourceDescription.Manager descriptions;

    @Inject
    private LocalNames names;

    @Override
    public IScope getScope(EObject context, EReference reference) {
        Wiring wiring = EcoreUtil2.getContainerOfType(context, Wiring.class);
        return switch (reference.getEReferenceType().getName()) {
            case "Zone" -> platformNames(context, Zone.class);
            case "Place" -> platformNames(context, Place.class);
            case "Position" -> platformNames(context, Position.class);
            case "GroundNode" -> platformNames(context, GroundNode.class);
            case "Mode" -> platformNames(context, Mode.class);
            case "Choice" -> choices(context, reference);
            case "Point" -> names.of(wiring, Breakout.class,
                    names.of(wiring, Run.class, platformNames(context, Place.class)));
            case "Breakout" -> names.of(wiring, Breakout.class, IScope.NULLSCOPE);
            case "Branch" -> names.of(wiring, Branch.class, IScope.NULLSCOPE);
            case "Run" -> names.of(wiring, Run.class, IScope.NULLSCOPE);
            case "Endable" -> names.of(wiring, Endable.class, platformNames(context, Device.class));
            case "Mateable" -> mates(context, wiring);
            default -> everywhere(context, reference);
        };
    }

    /** What the own file and then all others offer. */
    private IScope everywhere(EObject context, EReference reference) {
        Resource own = context.eResource();
        return SelectableBasedScope.createScope(global.getScope(own, reference, null),
                descriptions.getResourceDescription(own), reference.getEReferenceType(), false);
    }

    private IScope platformNames(EObject context, Class<? extends Named> sort) {
        return names.of(platform(context), sort, IScope.NULLSCOPE);
    }

    /** The platform around an object, or the one that the head around it names; null if there is none. */
    private Platform platform(EObject context) {
        Platform around = EcoreUtil2.getContainerOfType(context, Platform.class);
        Wiring wiring = EcoreUtil2.getContainerOfType(context, Wiring.class);
        Kit kit = EcoreUtil2.getContainerOfType(context, Kit.class);
        return around != null ? around
                : wiring != null ? (Platform) named(wiring, LoomPackage.Literals.WIRING__PLATFORM)
                : kit != null ? (Platform) named(kit, LoomPackage.Literals.KIT__PLATFORM) : null;
    }

    /** What the text of a reference to a top-level element names now; null if there is no such thing. */
    private EObject named(EObject source, EReference reference) {
        String text = text(source, reference);
        if (text.isEmpty()) {
            return null;
        }
        IEObjectDescription found = everywhere(source, reference)
                .getSingleElement(QualifiedName.create(text));
        EObject target = found == null ? null : EcoreUtil.resolve(found.getEObjectOrProxy(), source);
        return target == null || target.eIsProxy() ? null : target;
    }

    private static String text(EObject source, EStructuralFeature feature) {
        List<INode> nodes = NodeModelUtils.findNodesForFeature(source, feature);
        return nodes.isEmpty() ? "" : NodeModelUtils.getTokenText(nodes.getFirst());
    }

    /** The choices of the platform; in a catalogue or a waiver, which stand for themselves, those of every platform. */
    private IScope choices(EObject context, EReference reference) {
        Platform platform = platform(context);
        if (platform != null) {
            return names.of(platform, Choice.class, IScope.NULLSCOPE);
        }
        List<IEObjectDescription> all = new ArrayList<>();
        for (IEObjectDescription each : everywhere(context, reference).getAllElements()) {
            all.add(new AliasedEObjectDescription(QualifiedName.create(each.getName().getLastSegment()), each));
        }
        return MapBasedScope.createScope(IScope.NULLSCOPE, all);
    }

    /** Connectors and devices of the owner that is written behind "of", or else of the own drawing and its platform. */
    private IScope mates(EObject context, Wiring wiring) {
        EReference owner = context.eClass() == LoomPackage.Literals.MATES_FACT ? LoomPackage.Literals.MATES_FACT__OWNER
                : LoomPackage.Literals.CONNECTOR__MATE_OWNER;
        if (owner.getEContainingClass().isInstance(context) && !text(context, owner).isEmpty()) {
            return names.of(named(context, owner), Mateable.class, IScope.NULLSCOPE);
        }
        return names.of(wiring, Mateable.class, platformNames(context, Device.class));
    }
}
