// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.texteditor.ITextEditor;
import org.loomwright.workbench.text.Inks;

/**
 * Says how well what a workbench shows can be read: of each control with a text the contrast of its colours, of each
 * thing that is shown its ground, how much of it is light, and the greatest contrast to the ground that is in it.
 */
final class Readable {

    private static final List<String> VIEWS = List.of("vehicles", "fit", "years", "harness", "formboard", "circuit",
            "guide", "findings");

    private static final int LARGE = 60;

    private final Desk desk;
    private final Hand hand;

    Readable(Desk desk) {
        this.desk = desk;
        hand = desk.hand();
    }

    void say() throws CoreException {
        IProject project = desk.orrin("orrin");
        ITextEditor editor = desk.open(project.getFile("front-harness.loom"));
        StyledText text = desk.text(editor);
        hand.until("the text is coloured", () -> text.getStyleRanges().length > 100);
        int branch = hand.ask(() -> text.getText().indexOf("branch bBatt"));
        hand.tell(() -> editor.selectAndReveal(branch, 0));
        hand.rest(2_000);
        hand.picture("dark");
        say("editor", text);
        hand.tell(() -> styles(text));
        for (String view : VIEWS) {
            desk.view(view);
            hand.until("something is shown in " + view, () -> Hand.control((Composite) window(), Label.class, each ->
                    each.getText().startsWith("No project is open") || each.getText().startsWith("Reading "))
                    .isEmpty());
            hand.rest(2_000);
            hand.picture("dark-" + view);
            hand.tell(() -> controls(window(), each ->
                    contrast(view, each)));
            for (Canvas drawn : hand.ask(Readable.this::drawn)) {
                say(view, drawn);
            }
        }
    }

    private Control window() {
        return org.eclipse.ui.PlatformUI.getWorkbench().getWorkbenchWindows()[0].getShell();
    }

    private static void controls(Control control, Consumer<Control> each) {
        if (!control.isDisposed() && control.isVisible()) {
            each.accept(control);
            if (control instanceof Composite composite) {
                for (Control child : composite.getChildren()) {
                    controls(child, each);
                }
            }
        }
    }

    private static void contrast(String view, Control control) {
        boolean written = control instanceof Text || control instanceof Tree || control instanceof Table
                || control instanceof StyledText || control instanceof Label label && !label.getText().isBlank();
        if (written && control.isEnabled()) {
            tell("control", view + "/" + control.getClass().getSimpleName(), Inks.contrast(control.getForeground()
                    .getRGB(), control.getBackground().getRGB()));
        }
    }

    private static void styles(StyledText text) {
        for (StyleRange range : text.getStyleRanges()) {
            RGB ink = range.foreground == null ? text.getForeground().getRGB() : range.foreground.getRGB();
            RGB ground = range.background == null ? text.getBackground().getRGB() : range.background.getRGB();
            tell("style", text.getText(range.start, range.start).replaceAll("\\s", "_"), Inks.contrast(ink, ground));
        }
    }

    private List<Canvas> drawn() {
        List<Canvas> all = new ArrayList<>();
        controls(window(), each -> {
            if (each instanceof Canvas canvas && each.getClass() == Canvas.class && canvas.getChildren().length == 0
                    && canvas.getSize().y > LARGE && canvas.getSize().x > LARGE) {
                all.add(canvas);
            }
        });
        return all;
    }

    /** What the pixels of a control say. */
    private void say(String what, Control control) {
        ImageData seen = hand.ask(() -> {
            Point size = control.getSize();
            Image image = new Image(hand.display(), Math.max(1, size.x), Math.max(1, size.y));
            GC gc = new GC(control);
            gc.copyArea(image, 0, 0);
            gc.dispose();
            ImageData data = image.getImageData();
            image.dispose();
            return data;
        });
        Map<RGB, Integer> counts = new HashMap<>();
        int light = 0;
        for (int y = 0; y < seen.height; y++) {
            for (int x = 0; x < seen.width; x++) {
                RGB colour = seen.palette.getRGB(seen.getPixel(x, y));
                counts.merge(colour, 1, Integer::sum);
                light += Inks.luminance(colour) > 0.5 ? 1 : 0;
            }
        }
        RGB ground = counts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
        tell("ground", what, Inks.luminance(ground));
        tell("light", what, (double) light / (seen.width * seen.height));
        tell("written", what, counts.keySet().stream().mapToDouble(each -> Inks.contrast(each, ground)).max()
                .orElse(1));
    }

    private static void tell(String what, String where, double figure) {
        System.out.println(String.format(Locale.ROOT, "%s %s %.3f", what, where.replace(' ', '_'), figure));
    }
}
