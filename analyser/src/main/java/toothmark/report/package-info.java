/**
 * How do we say what was found?
 *
 * <p>In: an {@link toothmark.examination.Examination}. Out: a folder of results, written by {@link
 * toothmark.report.ResultFolder}: a page to read, and the same figures for scripts and
 * spreadsheets; and {@link toothmark.report.VerdictText} for the terminal. {@link
 * toothmark.report.WholeFile} writes any single file.
 */
package toothmark.report;
