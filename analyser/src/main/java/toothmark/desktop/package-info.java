/**
 * What does the person at the engine see and do?
 *
 * <p>In: files that are dropped, clicks and keys. Out: a window. Front door: {@link
 * toothmark.desktop.Desk}. Views, menus and dialogs are Swing, thin, and live on the event thread;
 * what they show and do sits in classes that import no Swing and are tested without a display. What
 * is drawn comes from {@code chart}, what is said of a capture from {@code findings} and {@code
 * report}, and the window's own words from one resource bundle.
 */
package toothmark.desktop;
