// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.PlatformUI;

/**
 * A person at the workbench: presses keys, moves the mouse, waits until something is to be seen, takes pictures. Used on
 * a thread that does not draw. What it posts goes through the window system like the work of real hands.
 */
final class Hand {

    private static final long PATIENCE = 90_000;
    private static final long BLINK = 40;

    private final Display display = PlatformUI.getWorkbench().getDisplay();

    Display display() {
        return display;
    }

    /** Asks something on the thread that draws. */
    <T> T ask(Supplier<T> question) {
        List<T> answer = new ArrayList<>();
        List<RuntimeException> failure = new ArrayList<>();
        List<Error> error = new ArrayList<>();
        display.syncExec(() -> {
            try {
                answer.add(question.get());
            } catch (RuntimeException e) {
                failure.add(e);
            } catch (Error e) {
                error.add(e);
            }
        });
        failure.forEach(e -> {
            throw e;
        });
        error.forEach(e -> {
            throw e;
        });
        return answer.getFirst();
    }

    /** Does something on the thread that draws. */
    void tell(Runnable work) {
        ask(() -> {
            work.run();
            return true;
        });
    }

    /** Waits until something holds on the thread that draws. */
    void until(String what, BooleanSupplier holds) {
        long end = System.currentTimeMillis() + PATIENCE;
        while (!ask(holds::getAsBoolean)) {
            if (System.currentTimeMillis() > end) {
                picture("failed");
                throw new AssertionError("not within a minute and a half: " + what);
            }
            rest(BLINK);
        }
    }

    /** Waits until something is there, and gives it. */
    <T> T found(String what, Supplier<Optional<T>> search) {
        List<T> found = new ArrayList<>();
        until(what, () -> {
            search.get().ifPresent(found::add);
            return !found.isEmpty();
        });
        return found.getFirst();
    }

    void rest(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Presses and releases a key, with {@code SWT.CTRL} and the like held. */
    void press(int held, int key) {
        for (int modifier : new int[] {SWT.CTRL, SWT.SHIFT, SWT.ALT}) {
            if ((held & modifier) != 0) {
                post(SWT.KeyDown, modifier, (char) 0);
            }
        }
        boolean letter = key >= ' ' && key < 0x10000 && key != SWT.DEL;
        post(SWT.KeyDown, letter ? 0 : key, letter ? (char) key : 0);
        post(SWT.KeyUp, letter ? 0 : key, letter ? (char) key : 0);
        for (int modifier : new int[] {SWT.ALT, SWT.SHIFT, SWT.CTRL}) {
            if ((held & modifier) != 0) {
                post(SWT.KeyUp, modifier, (char) 0);
            }
        }
        settle();
    }

    /** Types a text. */
    void type(String text) {
        for (char each : text.toCharArray()) {
            press(needsShift(each) ? SWT.SHIFT : 0, each == '\n' ? SWT.CR : each);
        }
    }

    private static boolean needsShift(char each) {
        return Character.isUpperCase(each) || "~!@#$%^&*()_+{}|:\"<>?".indexOf(each) >= 0;
    }

    /** Clicks into a control. */
    void click(Control control, int x, int y) {
        Point at = ask(() -> control.toDisplay(x, y));
        mouse(at);
    }

    /** Clicks into the middle of a control. */
    void click(Control control) {
        Point size = ask(control::getSize);
        click(control, size.x / 2, size.y / 2);
    }

    /** Clicks twice, quickly. */
    void doubleClick(Control control, int x, int y) {
        Point at = ask(() -> control.toDisplay(x, y));
        mouse(at);
        button();
        settle();
    }

    private void mouse(Point at) {
        Event move = new Event();
        move.type = SWT.MouseMove;
        move.x = at.x;
        move.y = at.y;
        tell(() -> display.post(move));
        rest(BLINK);
        button();
        settle();
    }

    private void button() {
        for (int type : new int[] {SWT.MouseDown, SWT.MouseUp}) {
            Event event = new Event();
            event.type = type;
            event.button = 1;
            event.count = 1;
            tell(() -> display.post(event));
        }
    }

    private void post(int type, int code, char letter) {
        Event event = new Event();
        event.type = type;
        event.keyCode = code;
        event.character = letter;
        if (!ask(() -> display.post(event))) {
            throw new IllegalStateException("the window system takes no key " + code + " " + (int) letter);
        }
    }

    /** Waits until what was posted was taken. */
    void settle() {
        rest(BLINK);
        display.syncExec(() -> {
            while (display.readAndDispatch()) {
                // one more
            }
        });
    }

    /** The first control of a type below another that fits, visible ones only. */
    static <T extends Control> Optional<T> control(Control below, Class<T> type, Predicate<T> fits) {
        if (below.isDisposed() || !below.isVisible()) {
            return Optional.empty();
        }
        if (type.isInstance(below) && fits.test(type.cast(below))) {
            return Optional.of(type.cast(below));
        }
        if (below instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                Optional<T> found = control(child, type, fits);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** The window with that title, or with a title that begins so. */
    Optional<Shell> shell(String title) {
        for (Shell shell : display.getShells()) {
            if (!shell.isDisposed() && shell.isVisible() && shell.getText().startsWith(title)) {
                return Optional.of(shell);
            }
        }
        return Optional.empty();
    }

    /** The window of the workbench. */
    Shell window() {
        return ask(() -> PlatformUI.getWorkbench().getWorkbenchWindows()[0].getShell());
    }

    /**
     * Gives the keys to the window of the workbench, after a dialog. Without a window manager the window system listens to
     * that only when it is newer than what somebody did last, so a click beside the tools comes first.
     */
    void front() {
        Shell shell = window();
        mouse(ask(() -> shell.toDisplay(shell.getClientArea().width / 2, 10)));
        tell(shell::forceActive);
        settle();
    }

    /** Takes a picture of the whole screen. */
    Path picture(String name) {
        settle();
        Path file = Path.of(System.getProperty("loomwright.pictures", "target/pictures"), name + ".png");
        tell(() -> {
            Rectangle bounds = PlatformUI.getWorkbench().getWorkbenchWindows()[0].getShell().getBounds();
            Image image = new Image(display, bounds.width, bounds.height);
            GC gc = new GC(display);
            gc.copyArea(image, bounds.x, bounds.y);
            gc.dispose();
            ImageLoader loader = new ImageLoader();
            loader.data = new org.eclipse.swt.graphics.ImageData[] {image.getImageData()};
            image.dispose();
            try {
                Files.createDirectories(file.getParent());
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
            loader.save(file.toString(), SWT.IMAGE_PNG);
        });
        return file;
    }
}
