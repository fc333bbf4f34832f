"""What a user would write with numpy: falling edges by interpolation, gaps by the ratio of periods."""
import numpy


def falling(time, signal, level):
    before = numpy.flatnonzero((signal[:-1] > level) & (signal[1:] <= level))
    share = (signal[before] - level) / (signal[before] - signal[before + 1])
    return time[before] + share * (time[before + 1] - time[before])


def summary(time, crank, coil):
    teeth = falling(time, crank, 0.0)
    sparks = falling(time, coil, 2.5)
    periods = numpy.diff(teeth)
    gaps = numpy.flatnonzero(periods[1:] > 2 * periods[:-1])
    return f"{len(teeth)} teeth, {len(gaps)} gaps, {len(sparks)} sparks"
