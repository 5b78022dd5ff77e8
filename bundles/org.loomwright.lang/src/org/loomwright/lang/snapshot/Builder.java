// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Device;
import org.loomwright.harness.Ref;
import org.loomwright.model.loom.Condition;
import org.loomwright.model.loom.IsFact;

/** What the builders of all sorts of elements share while one file is read. */
class Builder {
    final FileText file;
    final Conditions conditions;
    final Quantities quantities;
    final Lengths lengths;

    Builder(FileText file, Quantities quantities) {
        this.file = file;
        this.quantities = quantities;
        conditions = new Conditions(file);
        lengths = new Lengths(file, quantities);
    }

    Written of(EObject object) {
        return file.of(object);
    }

    Expression when(Condition condition) {
        return conditions.of(condition);
    }

    static String text(String text) {
        return FileText.orEmpty(text);
    }

    Device device(org.loomwright.model.loom.Device source) {
        Written written = of(source);
        FactList<Ref> parts = new FactList<>();
        written.ref("part").ifPresent(part -> parts.add(part, part.span()));
        source.getFacts().forEach(fact -> {
            if (fact instanceof IsFact is) {
                addPart(is, parts);
            }
        });
        return new Device(written.name("name"), text(source.getTitle()), parts.facts(), written.ref("place"),
                written.ref("ground"), source.isIntended(), when(source.getWhen()), written.span());
    }

    void addPart(IsFact fact, FactList<Ref> parts) {
        Written written = of(fact);
        Optional<Ref> part = written.ref("part");
        part.ifPresent(ref -> parts.add(ref, when(fact.getWhen()), written.span()));
    }
}
