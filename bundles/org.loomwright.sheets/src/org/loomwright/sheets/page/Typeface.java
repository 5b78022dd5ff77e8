// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The type of all sheets, Liberation Sans: how wide texts are, and which characters there are (Latin, Greek, Cyrillic
 * and the usual signs). Not safe for use by several threads; reading the fonts takes some hundredths of a second.
 */
public final class Typeface {

    /** Millimetres in a point. */
    public static final double POINT = 25.4 / 72;

    private static final String FOLDER = "fonts/";
    /** Takes the place of a character that the fonts do not have. */
    private static final char MISSING = '?';
    private static final int OFTEN = 128;

    private final Weight regular = new Weight("LiberationSans-Regular.ttf");
    private final Weight strong = new Weight("LiberationSans-Bold.ttf");

    /** One of the two fonts. */
    private static final class Weight {
        private final CmapLookup characters;
        private final TrueTypeFont font;
        private final double unit;
        /** Of what is written most; -1 where nobody has asked yet. */
        private final int[] often = new int[OFTEN];
        private final Map<Integer, Integer> widths = new HashMap<>();

        Weight(String file) {
            try (InputStream in = Typeface.class.getResourceAsStream(FOLDER + file)) {
                font = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in));
                characters = font.getUnicodeCmapLookup();
                unit = font.getUnitsPerEm();
                Arrays.fill(often, -1);
            } catch (IOException e) {
                throw new UncheckedIOException("the font " + file + " cannot be read", e);
            }
        }

        boolean has(int character) {
            return characters.getGlyphId(character) != 0;
        }

        int width(int character) {
            if (character >= OFTEN) {
                return widths.computeIfAbsent(character, this::advance);
            }
            if (often[character] < 0) {
                often[character] = advance(character);
            }
            return often[character];
        }

        private int advance(int character) {
            try {
                return font.getAdvanceWidth(characters.getGlyphId(character));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** The bytes of one of the fonts, for those who embed it. */
    public static InputStream open(boolean bold) {
        return Typeface.class.getResourceAsStream(
                FOLDER + (bold ? "LiberationSans-Bold.ttf" : "LiberationSans-Regular.ttf"));
    }

    /** The text with a question mark for every character that cannot be printed, and blanks for breaks and tabs. */
    public String printable(String text) {
        int plain = 0;
        while (plain < text.length() && text.charAt(plain) >= ' ' && text.charAt(plain) <= '~') {
            plain++;
        }
        if (plain == text.length()) {
            return text;
        }
        StringBuilder result = new StringBuilder(text.length());
        text.codePoints().forEach(each -> {
            if (Character.isWhitespace(each) || each == '\u00a0') {
                result.append(' ');
            } else if (regular.has(each) && strong.has(each)) {
                result.appendCodePoint(each);
            } else if (!Character.isISOControl(each) && Character.getType(each) != Character.FORMAT) {
                result.append(MISSING);
            }
        });
        return result.toString();
    }

    /** Width of a printable text in mm. */
    public double width(String text, double points, boolean bold) {
        Weight weight = bold ? strong : regular;
        long sum = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            sum += weight.width(text.codePointAt(i));
        }
        return sum / weight.unit * points * POINT;
    }
}
