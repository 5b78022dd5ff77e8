// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.List;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/**
 * Composes each sort of document. Each is linear in what it lists, but for conditions. For use by one thread.
 */
public final class Composer {

    private final Order order;
    private final Typeface face;
    private final boolean one;

    public Composer(Order order, Typeface face) {
        this.order = order;
        this.face = face;
        this.one = Words.count(order.vehicles()).equals("1 vehicle");
    }

    /** The cover sheet of a set; {@code documents} are the names of the others. */
    public Document cover(List<String> documents) {
        return lean(CoverSheet.of(order, documents));
    }

    /** The parts and bag list over the whole kit. */
    public Document parts() {
        return lean(PartsSheet.of(order));
    }

    /** The installation sheets of the whole kit. */
    public Document installation() {
        return lean(InstallationSheet.of(order, face));
    }

    /** The application and carry-over chart of the whole kit. */
    public Document application() {
        return lean(ApplicationSheet.of(order));
    }

    /** Tags and labels of the whole kit. */
    public Document tags() {
        return TagsSheet.of(order);
    }

    /** The wire list of a harness. */
    public Document wireList(LaidHarness harness) {
        return lean(WireListSheet.of(harness));
    }

    /** The crimp and splice sheet of a harness. */
    public Document crimps(LaidHarness harness) {
        return lean(CrimpSheet.of(harness, face));
    }

    /**
     * The formboard of a harness.
     *
     * @param pager  tells what room its pages have
     * @param width  of the board in mm
     * @param height of the board in mm
     */
    public Formboard formboard(LaidHarness harness, Pager pager, double width, double height) {
        Formboard formboard = FormboardSheet.of(harness, pager.room(FormboardSheet.empty(harness)), width, height,
                face);
        return new Formboard(lean(formboard.document()), formboard.board());
    }

    /** The circuit diagrams of a harness; {@code pager} tells what room its pages have. */
    public Document circuits(LaidHarness harness, Pager pager) {
        return CircuitSheet.of(order, harness, pager.room(CircuitSheet.empty(harness)), face);
    }

    /** The connector end views of a harness. */
    public Document endViews(LaidHarness harness) {
        return lean(EndViewSheet.of(harness, face));
    }

    /** The continuity chart of a harness. */
    public Document continuity(LaidHarness harness) {
        return lean(ContinuitySheet.of(harness));
    }

    /** The traveller of a harness. */
    public Document traveller(LaidHarness harness) {
        return TravellerSheet.of(order, harness);
    }

    /** In sheets for one vehicle nothing has to say that it is for all of them. */
    private Document lean(Document document) {
        if (!one) {
            return document;
        }
        return new Document(document.name(), document.title(), document.subject(), document.landscape(),
                document.blocks().stream().map(each -> Block.without(Block.without(each, "Vehicles", "all"),
                        "In the box of", "all")).toList(), document.data());
    }
}
