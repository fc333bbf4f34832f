/**
 * What should be drawn?
 *
 * <p>In: an {@link toothmark.examination.Examination}. Out: {@link toothmark.chart.Figure}s from
 * {@link toothmark.chart.Figures}, each a question, its answer and the chart that shows it; the
 * report and the window draw the same ones.
 */
package toothmark.chart;
