// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition.internal;

import java.util.ArrayList;
import java.util.List;
import org.logicng.formulas.FormulaFactory;
import org.logicng.formulas.Variable;
import org.logicng.knowledgecompilation.bdds.jbuddy.BDDKernel;

/** The node table of a decision diagram, with a bound on its size. */
final class Kernel extends BDDKernel {
    private static final int FIRST_NODES = 10_000;
    private static final int LEAST_CACHE = 3_000;
    private static final int MOST_CACHE = 60_000;
    private static final int CACHE_FOR_A_VARIABLE = 200;

    private final int mostNodes;

    Kernel(int variables, int mostNodes) {
        this(new FormulaFactory(), variables, mostNodes);
    }

    private Kernel(FormulaFactory factory, int variables, int mostNodes) {
        super(
                factory,
                ordering(factory, variables),
                Math.max(FIRST_NODES, 8 * variables),
                Math.clamp((long) CACHE_FOR_A_VARIABLE * variables, LEAST_CACHE, MOST_CACHE));
        this.mostNodes = mostNodes;
    }

    private static List<Variable> ordering(FormulaFactory factory, int variables) {
        List<Variable> ordering = new ArrayList<>();
        for (int i = 0; i < variables; i++) {
            ordering.add(factory.variable("v" + i));
        }
        return ordering;
    }

    /** Returns how often nodes that nobody holds were cleared away; numbers of nodes stay valid until the next time. */
    int clearings() {
        return gbcollectnum;
    }

    /** Called when the table is full of nodes that are in use; leaves it as it is if it must not grow. */
    @Override
    protected void nodeResize(boolean rehash) {
        if (nodesize >= mostNodes) {
            throw new NodeLimit(mostNodes);
        }
        super.nodeResize(rehash);
    }
}
