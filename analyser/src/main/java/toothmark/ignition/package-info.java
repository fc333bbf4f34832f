/**
 * When did each coil charge and fire?
 *
 * <p>In: the coils' channels and the crank's {@link toothmark.rotation.AngleTimeline}. Out: {@link
 * toothmark.ignition.CoilTrack}s. Angles are in degrees after tooth 1 only: where top dead centre
 * lies is not known here.
 */
package toothmark.ignition;
