// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;

/**
 * Where an object and its features stand in the text. Looks only at the nodes of the object's own line, never at those
 * of the block behind it, so that a file takes O(nodes) in all.
 */
final class Written {
    /** A feature's value in the text. */
    private record Piece(String feature, int start, int end) {
    }

    private final FileText file;
    private final List<Piece> pieces = new ArrayList<>(6);
    private int start = -1;
    private int end = -1;

    Written(FileText file, EObject object) {
        this.file = file;
        ICompositeNode node = NodeModelUtils.getNode(object);
        if (node != null && !collect(node)) {
            end = Math.max(end, lastVisible(node));
        }
    }

    /** Returns false if a block follows. */
    private boolean collect(ICompositeNode node) {
        for (INode child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            EObject element = child.getGrammarElement();
            if (child instanceof ILeafNode leaf && !leaf.isHidden() && file.features().opensBlock(element)) {
                return false;
            }
            String feature = element == null ? null : file.features().of(element);
            if (feature == null && child instanceof ICompositeNode inner && !inner.hasDirectSemanticElement()) {
                if (!collect(inner)) {
                    return false;
                }
                continue;
            }
            int from = firstVisible(child);
            if (from >= 0) {
                int to = lastVisible(child);
                start = start < 0 ? from : start;
                end = to;
                if (feature != null) {
                    pieces.add(new Piece(feature, from, to));
                }
            }
        }
        return true;
    }

    /** White space, a comment, the end of a line, or a token that was put in. */
    private boolean isNothing(ILeafNode leaf) {
        return leaf.isHidden() || leaf.getLength() == 0 || file.text().charAt(leaf.getOffset()) == '\n';
    }

    private int firstVisible(INode node) {
        if (node instanceof ILeafNode leaf) {
            return isNothing(leaf) ? -1 : leaf.getOffset();
        }
        for (INode child = ((ICompositeNode) node).getFirstChild(); child != null; child = child.getNextSibling()) {
            int from = firstVisible(child);
            if (from >= 0) {
                return from;
            }
        }
        return -1;
    }

    private int lastVisible(INode node) {
        if (node instanceof ILeafNode leaf) {
            return isNothing(leaf) ? -1 : leaf.getEndOffset();
        }
        for (INode child = ((ICompositeNode) node).getLastChild(); child != null; child = child.getPreviousSibling()) {
            int to = lastVisible(child);
            if (to >= 0) {
                return to;
            }
        }
        return -1;
    }

    /** Returns the span of the object, its block included. */
    Span span() {
        return start < 0 ? Span.NONE : file.lines().span(start, end - start);
    }

    /** Returns the span of the first value of a feature; that of the object if there is none. */
    Span span(String feature) {
        Piece piece = piece(feature);
        return piece == null ? span() : span(piece);
    }

    private Span span(Piece piece) {
        return file.lines().span(piece.start, piece.end - piece.start);
    }

    private Piece piece(String feature) {
        for (Piece piece : pieces) {
            if (piece.feature.equals(feature)) {
                return piece;
            }
        }
        return null;
    }

    boolean has(String feature) {
        return piece(feature) != null;
    }

    /** Returns the end of the first value of a feature; the start of the object if there is none. */
    int endOf(String feature) {
        Piece piece = piece(feature);
        return piece == null ? Math.max(0, start) : piece.end;
    }

    int end() {
        return Math.max(0, end);
    }

    private String text(Piece piece) {
        return file.word(piece.start, piece.end);
    }

    /** Returns a feature that is a name of its own, or {@link Name#NONE}. */
    Name name(String feature) {
        Piece piece = piece(feature);
        return piece == null ? Name.NONE : new Name(text(piece), span(piece));
    }

    List<Name> names(String feature) {
        return pieces.stream().filter(piece -> piece.feature.equals(feature))
                .map(piece -> new Name(text(piece), span(piece))).toList();
    }

    /** Returns a feature that names something else. */
    Optional<Ref> ref(String feature) {
        Piece piece = piece(feature);
        return piece == null ? Optional.empty() : Optional.of(Ref.of(text(piece), span(piece)));
    }

    /** Returns a reference with the thing that it is looked for in. */
    Optional<Ref> ref(String feature, String ownerFeature) {
        Piece owner = piece(ownerFeature);
        Piece piece = piece(feature);
        return owner == null || piece == null ? ref(feature)
                : Optional.of(new Ref(text(piece), text(owner),
                        file.lines().span(piece.start, owner.end - piece.start)));
    }

    /** Returns a feature that names something else, or a reference to nothing. */
    Ref needed(String feature) {
        return ref(feature).orElse(Ref.of("", Span.NONE));
    }

    List<Ref> refs(String feature) {
        return pieces.stream().filter(piece -> piece.feature.equals(feature))
                .map(piece -> Ref.of(text(piece), span(piece))).toList();
    }
}
