"""Writes a capture of a 60-2 wheel and one coil, as large as asked, the same bytes every time."""
import sys

import numpy

RATE_HZ = 200_000
RPM = 3000
SLOTS = 60
ROWS = 1 << 16


def block(first, random):
    index = first + numpy.arange(ROWS)
    turns = index * (RPM / 60 / RATE_HZ)
    slot = (turns * SLOTS) % SLOTS
    tooth = slot < SLOTS - 2
    crank = numpy.where(tooth, -2.5 * numpy.sin(2 * numpy.pi * (slot % 1)), 0.02)
    crank = crank + random.normal(0, 0.01, ROWS)
    coil = numpy.where(turns % 1 < 0.2, 4.98, 0.02)
    rows = numpy.column_stack((index / RATE_HZ, crank, coil))
    return "".join("%.8e,%.3e,%.3e\n" % tuple(row) for row in rows.tolist())


def write(path, size):
    random = numpy.random.Generator(numpy.random.PCG64(60))
    with open(path, "w", encoding="ascii") as out:
        done = out.write("time (s),crank (V),coil (V)\n")
        first = 0
        while done < size:
            done += out.write(block(first, random))
            first += ROWS


if __name__ == "__main__":
    write(sys.argv[1], int(sys.argv[2]))
