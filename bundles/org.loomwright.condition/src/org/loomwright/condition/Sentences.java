// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Expression.And;
import org.loomwright.condition.internal.Cover;
import org.loomwright.condition.internal.Cube;
import org.loomwright.condition.internal.Diagram;

/** Puts covers into words. */
final class Sentences {
    private Sentences() {
    }

    static Wording of(Cover cover, Phrases phrases, Diagram diagram) {
        List<Expression> terms = new ArrayList<>();
        for (Cube cube : cover.cubes()) {
            terms.add(term(cube, cover.axes(), phrases));
        }
        Wording.Proof proof = switch (cover.quality()) {
            case LEAST -> Wording.Proof.LEAST;
            case LEAST_ON_SUPPORT -> Wording.Proof.LEAST_ON_SUPPORT;
            case IRREDUNDANT -> Wording.Proof.IRREDUNDANT;
            case PARTIAL -> Wording.Proof.PARTIAL;
        };
        return new Wording(Expression.anyOf(terms), terms.size(), proof, diagram.count(cover.left()));
    }

    private static Expression term(Cube cube, int[] axes, Phrases phrases) {
        List<Expression> literals = new ArrayList<>();
        for (int i = 0; i < axes.length; i++) {
            if (!cube.isFull(i)) {
                Expression literal = phrases.expression(axes[i], cube.members(i));
                literals.addAll(literal instanceof And and ? and.operands() : List.of(literal));
            }
        }
        return Expression.allOf(literals);
    }
}
