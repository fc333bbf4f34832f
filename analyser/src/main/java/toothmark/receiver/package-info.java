/**
 * What would a controller have made of this signal?
 *
 * <p>A textbook input stage and follower, simple on purpose, run over the capture as it is. In: the
 * crank channel's signal, and a wheel pattern. Out: receiver edges and {@link
 * toothmark.receiver.SyncLoss}es.
 */
package toothmark.receiver;
