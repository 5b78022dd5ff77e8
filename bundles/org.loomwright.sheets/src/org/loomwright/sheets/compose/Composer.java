// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.List;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Pager;
import org.loomwright.sheets.page.Typeface;

/**
 * Composes each sort of document. Each is linear in what it lists, but for conditions. For use by one thread.
 */
public final class Composer {

    private final Order order;
    private final Typeface face;

    public Composer(Order order, Typeface face) {
        this.order = order;
        this.face = face;
    }

    /** The cover sheet of a set; {@code documents} are the names of the others. */
    public Document cover(List<String> documents) {
        return CoverSheet.of(order, documents);
    }

    /** The parts and bag list over the whole kit. */
    public Document parts() {
        return PartsSheet.of(order);
    }

    /** The installation sheets of the whole kit. */
    public Document installation() {
        return InstallationSheet.of(order, face);
    }

    /** The application and carry-over chart of the whole kit. */
    public Document application() {
        return ApplicationSheet.of(order);
    }

    /** Tags and labels of the whole kit. */
    public Document tags() {
        return TagsSheet.of(order);
    }

    /** The wire list of a harness. */
    public Document wireList(LaidHarness harness) {
        return WireListSheet.of(harness);
    }

    /** The crimp and splice sheet of a harness. */
    public Document crimps(LaidHarness harness) {
        return CrimpSheet.of(harness, face);
    }

    /**
     * The formboard of a harness.
     *
     * @param pager  tells what room its pages have
     * @param width  of the board in mm
     * @param height of the board in mm
     */
    public Formboard formboard(LaidHarness harness, Pager pager, double width, double height) {
        return FormboardSheet.of(harness, pager.room(FormboardSheet.empty(harness)), width, height, face);
    }

    /** The circuit diagrams of a harness; {@code pager} tells what room its pages have. */
    public Document circuits(LaidHarness harness, Pager pager) {
        return CircuitSheet.of(order, harness, pager.room(CircuitSheet.empty(harness)), face);
    }

    /** The connector end views of a harness. */
    public Document endViews(LaidHarness harness) {
        return EndViewSheet.of(harness, face);
    }

    /** The continuity chart of a harness. */
    public Document continuity(LaidHarness harness) {
        return ContinuitySheet.of(harness);
    }

    /** The traveller of a harness. */
    public Document traveller(LaidHarness harness) {
        return TravellerSheet.of(order, harness);
    }
}
