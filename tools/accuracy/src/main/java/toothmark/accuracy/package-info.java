/**
 * How good is the analyser: generated captures go in whose truth is known from the machine that
 * made them, and what comes out is measured against it.
 *
 * <p>{@link toothmark.accuracy.Main} runs suites of {@link toothmark.accuracy.Study studies} and
 * writes {@code docs/accuracy.md}. A study is a question, its captures are named by {@link
 * toothmark.accuracy.CaseName}, and each can be run again alone and written to disk. Bounds are in
 * the page beside what was measured; nothing here passes or fails a build.
 */
package toothmark.accuracy;
