// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.write;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/** Writes a drawing as SVG 1.1, one unit a millimetre. Linear in the number of marks; equal input gives equal bytes. */
public final class SvgWriter {

    private final Typeface face;

    /** @param face what can be printed */
    public SvgWriter(Typeface face) {
        this.face = face;
    }

    /** The bytes of the file. */
    public byte[] bytes(String title, Drawing drawing) {
        StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"").append(mm(drawing.width()))
                .append("mm\" height=\"").append(mm(drawing.height())).append("mm\" viewBox=\"0 0 ")
                .append(mm(drawing.width())).append(' ').append(mm(drawing.height())).append("\">\n<title>")
                .append(escaped(title)).append("</title>\n");
        drawing.marks().forEach(mark -> write(mark, out));
        return out.append("</svg>\n").toString().getBytes(StandardCharsets.UTF_8);
    }

    private void write(Mark mark, StringBuilder out) {
        switch (mark) {
            case Mark.Text text -> out.append("<text x=\"").append(mm(text.at().x())).append("\" y=\"")
                    .append(mm(text.at().y())).append("\" font-family=\"Liberation Sans, sans-serif\" font-size=\"")
                    .append(mm(text.points() * Typeface.POINT)).append('"')
                    .append(text.bold() ? " font-weight=\"bold\"" : "")
                    .append(text.turned() == 0 ? "" : " transform=\"rotate(" + mm(-text.turned()) + " "
                            + mm(text.at().x()) + " " + mm(text.at().y()) + ")\"")
                    .append(" fill=\"").append(ink(text.ink())).append("\">").append(escaped(text.text()))
                    .append("</text>\n");
            case Mark.Stroke stroke -> out.append("<polyline points=\"").append(points(stroke.points()))
                    .append("\" fill=\"none\" stroke=\"").append(ink(stroke.ink())).append("\" stroke-width=\"")
                    .append(mm(stroke.width())).append('"').append(stroke.dash() > 0 ? " stroke-dasharray=\""
                            + mm(stroke.dash()) + "\"" : "").append("/>\n");
            case Mark.Fill fill -> out.append("<polygon points=\"").append(points(fill.points()))
                    .append("\" fill=\"").append(ink(fill.ink())).append("\"/>\n");
            case Mark.Circle circle -> out.append("<circle cx=\"").append(mm(circle.centre().x())).append("\" cy=\"")
                    .append(mm(circle.centre().y())).append("\" r=\"").append(mm(circle.radius())).append("\" ")
                    .append(circle.filled() ? "fill=\"" + ink(circle.ink()) + "\"" : "fill=\"none\" stroke=\""
                            + ink(circle.ink()) + "\" stroke-width=\"" + mm(circle.width()) + "\"").append("/>\n");
        }
    }

    private static String points(List<Point> points) {
        StringBuilder out = new StringBuilder();
        points.forEach(each -> out.append(out.isEmpty() ? "" : " ").append(mm(each.x())).append(',')
                .append(mm(each.y())));
        return out.toString();
    }

    private static String mm(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static String ink(Ink ink) {
        return String.format(Locale.ROOT, "#%02x%02x%02x", ink.red(), ink.green(), ink.blue());
    }

    private String escaped(String text) {
        return face.printable(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
