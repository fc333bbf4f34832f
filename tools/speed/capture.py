"""Writes a capture of a 60-2 wheel and one coil, as large as asked, the same bytes every time."""
import sys

import numpy

RATE_HZ = 200_000
RPM = 3000
SLOTS = 60
ROWS = 128_000  # 32 turns; the signals repeat, the times go on
DIGITS = 48  # '0'


def signals():
    turns = numpy.arange(ROWS) * (RPM / 60 / RATE_HZ)
    slot = (turns * SLOTS) % SLOTS
    crank = numpy.where(slot < SLOTS - 2, -2.5 * numpy.sin(2 * numpy.pi * (slot % 1)), 0.02)
    crank = crank + numpy.random.Generator(numpy.random.PCG64(60)).normal(0, 0.01, ROWS)
    coil = numpy.where(turns % 1 < 0.2, 4.98, 0.02)
    return crank, coil


def scientific(values, decimals):
    """Each value as %.<decimals>e, one row of bytes each, 0 where there is no sign."""
    size = numpy.abs(values)
    power = numpy.floor(numpy.log10(numpy.where(size > 0, size, 1))).astype(int)
    mantissa = numpy.rint(size * 10.0 ** (decimals - power)).astype(numpy.int64)
    carried = mantissa >= 10 ** (decimals + 1)
    mantissa, power = numpy.where(carried, mantissa // 10, mantissa), power + carried
    out = numpy.zeros((len(values), decimals + 7), numpy.uint8)
    out[:, 0] = numpy.where(values < 0, ord("-"), 0)
    for place in range(decimals, -1, -1):
        out[:, 1 if place == 0 else place + 2] = mantissa % 10 + DIGITS
        mantissa = mantissa // 10
    out[:, 2] = ord(".")
    out[:, -4] = ord("e")
    out[:, -3] = numpy.where(power < 0, ord("-"), ord("+"))
    out[:, -2] = numpy.abs(power) // 10 + DIGITS
    out[:, -1] = numpy.abs(power) % 10 + DIGITS
    return out


def behind_the_time():
    comma = numpy.full((ROWS, 1), ord(","), numpy.uint8)
    end = numpy.full((ROWS, 1), ord("\n"), numpy.uint8)
    crank, coil = (scientific(values, 3) for values in signals())
    return numpy.hstack((comma, crank, comma, coil, end))


def write(path, size):
    rest = behind_the_time()
    with open(path, "wb") as out:
        done = out.write(b"time (s),crank (V),coil (V)\n")
        first = 0
        whole = True
        while whole:
            time = scientific((first + numpy.arange(ROWS)) / RATE_HZ, 8)
            rows = numpy.hstack((time, rest))
            text = rows[rows != 0].tobytes()
            whole = done + len(text) < size
            done += out.write(text if whole else text[: text.rfind(b"\n", 0, size - done) + 1])
            first += ROWS


if __name__ == "__main__":
    write(sys.argv[1], int(sys.argv[2]))
