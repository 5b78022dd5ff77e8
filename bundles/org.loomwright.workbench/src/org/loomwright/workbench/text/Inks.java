// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.text;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;

/**
 * The colours of text that are ours, each for a light and a dark ground. What is told by one is told by words, by
 * weight or by the kind of line, too. A test holds the contrast of each against WCAG 2.2, success criterion 1.4.3.
 */
public enum Inks {
    /** Words of the language. */
    KEYWORD(new RGB(127, 0, 85), new RGB(232, 150, 210)),
    /** Comments. */
    COMMENT(new RGB(47, 107, 75), new RGB(140, 195, 160)),
    /** Texts between quotation marks. */
    TEXT(new RGB(42, 90, 170), new RGB(140, 185, 255)),
    /** Names, where they are given. */
    NAME(new RGB(110, 75, 0), new RGB(230, 200, 130)),
    /** Figures and their units. */
    FIGURE(new RGB(0, 95, 115), new RGB(130, 210, 220)),
    /** What is not there, or is no part of the answer. */
    PALE(new RGB(95, 95, 95), new RGB(175, 175, 175));

    private static final double MIDDLE = 0.18;

    private final RGB onLight;
    private final RGB onDark;

    Inks(RGB onLight, RGB onDark) {
        this.onLight = onLight;
        this.onDark = onDark;
    }

    /** On the ground that texts have now. On the thread of the window only. */
    public RGB now() {
        return on(dark());
    }

    /** On a light or a dark ground. */
    public RGB on(boolean dark) {
        return dark ? onDark : onLight;
    }

    /** The same as a colour to draw with. */
    public Color colour() {
        return new Color(now());
    }

    /** Whether texts stand on a dark ground now. On the thread of the window only. */
    public static boolean dark() {
        return luminance(Display.getCurrent().getSystemColor(SWT.COLOR_LIST_BACKGROUND).getRGB()) < MIDDLE;
    }

    /** Relative luminance, from 0 for black to 1 for white, as WCAG 2.2 defines it for sRGB. */
    public static double luminance(RGB colour) {
        return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    }

    /** Contrast ratio of two colours, from 1 to 21, as WCAG 2.2 defines it. */
    public static double contrast(RGB one, RGB other) {
        double first = luminance(one);
        double second = luminance(other);
        return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
    }

    private static double linear(int value) {
        double share = value / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
