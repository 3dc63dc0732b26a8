#!/usr/bin/env python3
"""A million stacks of ten members by NumPy on one thread, for simulation_bench.cpp.

Prints a line for each of its runs: the seconds it takes to draw normal members and add them up,
and with all that is asked of them (mean, deviation, percentiles, 64 bars, count out of limits).
"""

import time

import numpy

RUNS = 1_000_000
HALVES = numpy.arange(1, 11) * 0.001
WORST = HALVES.sum()


def draw(random):
    total = numpy.full(RUNS, 100.0)
    for half in HALVES:
        total += random.normal(0.0, half / 3, RUNS)
    return total


def evaluate(total):
    below = numpy.count_nonzero(total < 100.0 - WORST / 3)
    above = numpy.count_nonzero(total > 100.0 + WORST)
    bars, _ = numpy.histogram(total, bins=64, range=(100.0 - WORST, 100.0 + WORST))
    percentiles = numpy.percentile(total, [0.135, 2.5, 50, 97.5, 99.865])
    return total.mean(), total.std(), percentiles, bars, below, above


def main():
    random = numpy.random.default_rng(1)
    evaluate(draw(random))
    for _ in range(7):
        begin = time.perf_counter()
        total = draw(random)
        drawn = time.perf_counter()
        evaluate(total)
        print(drawn - begin, time.perf_counter() - begin, flush=True)


main()
