/**
 * What is wrong, and how do we know?
 *
 * <p>In: {@link toothmark.findings.Observations}, everything that the earlier stages found. Out: a
 * list of {@link toothmark.findings.Finding}s by rank. The only package that knows severities.
 */
package toothmark.findings;
