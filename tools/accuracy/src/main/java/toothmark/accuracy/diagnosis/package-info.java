/** Whether what is wrong is found, and nothing else. */
package toothmark.accuracy.diagnosis;
