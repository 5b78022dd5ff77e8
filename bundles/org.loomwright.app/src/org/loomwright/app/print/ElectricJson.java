// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;

/** Currents and voltages of one vehicle for machines; {@code docs/cli-json.md} describes it. */
public final class ElectricJson {

    /** A load that takes less than this, in A, is off. */
    private static final double LEAST = 5e-4;
    private static final MathContext DIGITS = new MathContext(9);

    private ElectricJson() {
    }

    /** The document of {@code electric}. */
    public static String of(String project, List<Solved> all, String circuit) {
        return Json.object(json -> {
            json.name("schema").value(CheckJson.SCHEMA);
            json.name("command").value("electric");
            json.name("project").value(project);
            json.name("fitted").beginArray();
            for (Solved each : all) {
                solved(json, each, circuit);
            }
            json.endArray();
        });
    }

    private static void solved(JsonWriter json, Solved solved, String circuit) throws IOException {
        json.beginObject();
        json.name("platform").value(solved.schematic().fitment().platform().name());
        json.name("vehicle").value(solved.words());
        json.name("with").value(solved.schematic().fitment().words());
        json.name("notes").beginArray();
        for (var remark : solved.schematic().remarks()) {
            if (!remark.when().excludes(solved.vehicle())) {
                json.value(remark.subject().label() + ": " + remark.words());
            }
        }
        json.endArray();
        json.name("modes").beginArray();
        for (OperatingPoint point : solved.points()) {
            mode(json, solved, point, circuit);
        }
        json.endArray();
        json.endObject();
    }

    private static void mode(JsonWriter json, Solved solved, OperatingPoint point, String circuit)
            throws IOException {
        json.beginObject();
        json.name("mode").value(point.mode().name());
        json.name("engine").value(point.mode().engine().word());
        json.name("solved").value(point.solved());
        json.name("residualA").jsonValue(number(point.residual()));
        json.name("troubles").beginArray();
        for (OperatingPoint.Trouble trouble : point.troubles()) {
            json.value(trouble.words());
        }
        json.endArray();
        json.name("pieces").beginArray();
        for (Piece piece : point.schematic().pieces()) {
            boolean asked = circuit.isEmpty() || ElectricText.touches(point, piece, circuit);
            if (point.conducts(piece) && asked) {
                piece(json, solved, point, piece);
            }
        }
        json.endArray();
        json.endObject();
    }

    private static void piece(JsonWriter json, Solved solved, OperatingPoint point, Piece piece) throws IOException {
        json.beginObject();
        json.name("role").value(piece.role().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
        json.name("element").value(piece.subject().owner() + ":" + piece.subject().element());
        json.name("label").value(piece.subject().label());
        json.name("amps").jsonValue(number(point.amps(piece)));
        json.name("volts").jsonValue(number(point.volts(piece)));
        if (piece.model() instanceof Model.Working working) {
            json.name("designVolts").jsonValue(number(working.volts()));
            if (point.solved() && Math.abs(point.amps(piece)) > LEAST) {
                way(json, point, piece);
            }
        }
        if (piece.model() instanceof Model.Copper && piece.subject().wire().isPresent()) {
            json.name("celsius").jsonValue(number(point.celsius()[piece.index()]));
            var allowed = solved.ratings().allowed(piece, solved.vehicle(), point.currents());
            if (allowed.isPresent()) {
                json.name("allowedAmps").jsonValue(number(allowed.get().amps()));
            }
        } else if (piece.rating() > 0 && piece.role().passes()) {
            json.name("ratedAmps").jsonValue(number(piece.rating()));
        }
        json.endObject();
    }

    /** What becomes of the voltage of the source on the way of a load, piece by piece. */
    private static void way(JsonWriter json, OperatingPoint point, Piece load) throws IOException {
        Trail trail = Trail.of(point, load);
        json.name("lostInFeed").jsonValue(number(trail.feed()));
        json.name("lostInReturn").jsonValue(number(trail.back()));
        json.name("way").beginArray();
        for (Trail.Step step : trail.steps()) {
            json.beginObject();
            json.name("label").value(step.piece().subject().label());
            json.name("amps").jsonValue(number(step.amps()));
            json.name("drop").jsonValue(number(step.drop()));
            json.endObject();
        }
        json.endArray();
    }

    static String number(double value) {
        return value == 0 ? "0" : new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
    }
}
