"""Reads a capture with polars, times the edges of two channels and finds the gaps of the wheel."""
import sys

import edges
import polars

table = polars.read_csv(sys.argv[1])
time, crank, coil = (table[name].to_numpy() for name in table.columns)
print(edges.summary(time, crank, coil))
