/**
 * What does the person at the engine see and do?
 *
 * <p>In: files that are dropped, clicks and keys. Out: a window. Front door: {@link
 * toothmark.desktop.Desk}. Classes whose name ends in {@code View} or {@code Window} are Swing and
 * live on the event thread; the others hold no widget and are tested without a display. What is
 * drawn comes from {@code chart}, what is said of a capture from {@code findings} and {@code
 * report}, and the window's own words from one resource bundle.
 */
package toothmark.desktop;
