// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.write;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Page;
import org.loomwright.sheets.page.Typeface;

/**
 * Writes pages as PDF with the parts of the fonts that they use. Says nothing of the time and the machine, so that
 * equal pages give equal bytes. Linear in the number of marks; for use by one thread.
 */
public final class PdfWriter {

    private static final double PER_MM = 72 / 25.4;
    /** Control points of a quarter of a circle: 4/3 (sqrt 2 - 1). */
    private static final double QUARTER = 0.552_284_75;

    private final Typeface face;

    private final TrueTypeFont regular;
    private final TrueTypeFont bold;

    /**
     * Reads the fonts, which takes some hundredths of a second; one writer does for many documents.
     *
     * @param face what can be printed
     */
    public PdfWriter(Typeface face) {
        this.face = face;
        this.regular = read(false);
        this.bold = read(true);
    }

    private static TrueTypeFont read(boolean bold) {
        try (InputStream in = Typeface.open(bold)) {
            TrueTypeFont font = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in));
            font.setEnableGsub(false); // a ligature would be of another width than was measured
            return font;
        } catch (IOException e) {
            throw new UncheckedIOException("a font cannot be read", e);
        }
    }

    /** The bytes of the file. */
    public byte[] bytes(String title, List<Page> pages) {
        try (PDDocument document = new PDDocument(); ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            document.setDocumentId(1L);
            PDDocumentInformation about = new PDDocumentInformation();
            about.setTitle(face.printable(title));
            about.setCreator("Loomwright");
            document.setDocumentInformation(about);
            Fonts fonts = new Fonts(PDType0Font.load(document, regular, true),
                    PDType0Font.load(document, bold, true));
            for (Page page : pages) {
                add(page, document, fonts);
            }
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("a document could not be put together", e);
        }
    }

    private record Fonts(PDFont regular, PDFont bold) {
    }

    private void add(Page page, PDDocument document, Fonts fonts) throws IOException {
        PDPage sheet = new PDPage(new PDRectangle((float) (page.width() * PER_MM), (float) (page.height() * PER_MM)));
        document.addPage(sheet);
        try (PDPageContentStream out = new PDPageContentStream(document, sheet)) {
            for (Mark mark : page.marks()) {
                switch (mark) {
                    case Mark.Text text -> text(text, page.height(), fonts, out);
                    case Mark.Stroke stroke -> stroke(stroke, page.height(), out);
                    case Mark.Fill fill -> fill(fill, page.height(), out);
                    case Mark.Circle circle -> circle(circle, page.height(), out);
                }
            }
        }
    }

    private void text(Mark.Text text, double height, Fonts fonts, PDPageContentStream out) throws IOException {
        String words = face.printable(text.text());
        if (words.isBlank()) {
            return;
        }
        out.beginText();
        out.setFont(text.bold() ? fonts.bold() : fonts.regular(), (float) text.points());
        ink(text.ink(), false, out);
        out.setTextMatrix(Matrix.getRotateInstance(Math.toRadians(text.turned()), x(text.at()), y(text.at(), height)));
        out.showText(words);
        out.endText();
    }

    private static void stroke(Mark.Stroke stroke, double height, PDPageContentStream out) throws IOException {
        ink(stroke.ink(), true, out);
        out.setLineWidth((float) (stroke.width() * PER_MM));
        out.setLineDashPattern(stroke.dash() > 0 ? new float[] {(float) (stroke.dash() * PER_MM)} : new float[0], 0);
        path(stroke.points(), height, out);
        out.stroke();
    }

    private static void fill(Mark.Fill fill, double height, PDPageContentStream out) throws IOException {
        ink(fill.ink(), false, out);
        path(fill.points(), height, out);
        out.fill();
    }

    private static void path(List<Point> points, double height, PDPageContentStream out) throws IOException {
        out.moveTo(x(points.getFirst()), y(points.getFirst(), height));
        for (Point point : points.subList(1, points.size())) {
            out.lineTo(x(point), y(point, height));
        }
    }

    private static void circle(Mark.Circle circle, double height, PDPageContentStream out) throws IOException {
        float x = x(circle.centre());
        float y = y(circle.centre(), height);
        float r = (float) (circle.radius() * PER_MM);
        float k = (float) (r * QUARTER);
        ink(circle.ink(), !circle.filled(), out);
        out.setLineWidth((float) (circle.width() * PER_MM));
        out.setLineDashPattern(new float[0], 0);
        out.moveTo(x + r, y);
        out.curveTo(x + r, y + k, x + k, y + r, x, y + r);
        out.curveTo(x - k, y + r, x - r, y + k, x - r, y);
        out.curveTo(x - r, y - k, x - k, y - r, x, y - r);
        out.curveTo(x + k, y - r, x + r, y - k, x + r, y);
        if (circle.filled()) {
            out.fill();
        } else {
            out.stroke();
        }
    }

    private static void ink(Ink ink, boolean line, PDPageContentStream out) throws IOException {
        float red = ink.red() / 255f;
        float green = ink.green() / 255f;
        float blue = ink.blue() / 255f;
        if (line) {
            out.setStrokingColor(red, green, blue);
        } else {
            out.setNonStrokingColor(red, green, blue);
        }
    }

    private static float x(Point point) {
        return (float) (point.x() * PER_MM);
    }

    private static float y(Point point, double height) {
        return (float) ((height - point.y()) * PER_MM);
    }
}
