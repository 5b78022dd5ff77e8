// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import org.loomwright.app.DraftAdaptor.Drafted;
import org.loomwright.compare.draft.AdaptorDraft;

/** What an adaptor joins. */
public final class AdaptorText {

    private AdaptorText() {
    }

    /** For people. */
    public static String text(Drafted drafted) {
        AdaptorDraft draft = drafted.draft();
        StringBuilder out = new StringBuilder(Cells.printable(draft.name())).append(": ")
                .append(draft.joints().size()).append(draft.joints().size() == 1 ? " way" : " ways")
                .append(" with the same function on both sides\n");
        draft.joints().forEach(each -> out.append("  ").append(each.one()).append(" - ").append(each.other())
                .append("  ").append(Cells.printable(each.title())).append(each.size().isEmpty() ? "" : ", "
                        + each.size()).append('\n'));
        if (!draft.open().isEmpty()) {
            out.append("  left open, since the other side has no way for it:\n");
            draft.open().forEach(each -> out.append("    ").append(Cells.printable(each)).append('\n'));
        }
        return out.toString();
    }

    /** The same as JSON. */
    public static String json(Drafted drafted) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("plan");
            json.name("adaptor").value(drafted.draft().name());
            json.name("joints").beginArray();
            for (AdaptorDraft.Joint each : drafted.draft().joints()) {
                json.beginObject();
                json.name("one").value(each.one());
                json.name("other").value(each.other());
                json.name("title").value(each.title());
                json.name("size").value(each.size());
                json.name("colour").value(each.colour());
                json.endObject();
            }
            json.endArray();
            json.name("leftOpen").beginArray();
            for (String each : drafted.draft().open()) {
                json.value(each);
            }
            json.endArray();
        });
    }
}
