"""How fast a million points of price and use are under a whole contract, side by side in one run
and on one core, as ratios to wattweek."""

import json
import os
import subprocess
import sys

import numpy as np

import grid
import page
import side_by_side

WATTWEEK = side_by_side.WATTWEEK
NAMES = {
    WATTWEEK: WATTWEEK,
    "sorted": "grouped, all points at once, months sorted out (numpy)",
    "grouped": "grouped, all points at once (numpy)",
    "naive": "naive: hour by hour, point by point (numpy)",
}
COLUMNS = {"grid": "all in all", "bills": "of it bills"}
FACTORS = (0.5, 2, 1000)
NAIVE_POINTS = 20


def main():
    options = page.arguments("--contract", "--bench")
    os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})
    runs, load = [], [os.getloadavg()[0]]
    for repetition in range(options.repetitions):
        print(f"repetition {repetition + 1} of {options.repetitions}", file=sys.stderr)
        runs.append(wattweek(options) | numpys(options))
        load.append(os.getloadavg()[0])
    page.deliver("grid", report(runs, load), options)


# --- (what, who) -> seconds of one repetition, for each point ---


def wattweek(options):
    command = [options.bench, "--benchmark_filter=(grid|bills)_under_full_contract.*/1/",
               "--benchmark_format=json", "--benchmark_min_time=0.3"]
    found = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
    bench = {case["name"].split("_")[0]: case["real_time"] for case in found["benchmarks"]}
    return {(what, WATTWEEK): bench[what] / 1e3 / FACTORS[2] ** 2 for what in COLUMNS}


def numpys(options):
    """The files are read, as on the side of wattweek."""
    scaled, factors = grid.Scaled(options.study, options.contract), np.linspace(*FACTORS)
    taken = {}
    for who in ("sorted", "grouped"):
        points = None

        def prepare():
            nonlocal points
            points = grid.Grid(scaled, factors)

        def bills():
            for _ in points.pieces(factors, who == "sorted"):
                pass

        energies = side_by_side.timed(prepare, rounds=5) / factors.size**2
        taken["bills", who] = side_by_side.timed(bills, rounds=5) / factors.size**2
        taken["grid", who] = energies + taken["bills", who]
    naive, some = grid.Naive(scaled), np.linspace(*FACTORS[:2], NAIVE_POINTS)
    taken["grid", "naive"] = side_by_side.timed(
        lambda: [naive.at(price, use) for price, use in zip(some, some)]) / NAIVE_POINTS
    return taken


def report(runs, load):
    lines = ["| | " + " | ".join(COLUMNS.values()) + " |", "|---|" + "---|" * len(COLUMNS)]
    for who, name in NAMES.items():
        cells = ["1" if who == WATTWEEK else side_by_side.ratio(runs, what, who)
                 for what in COLUMNS]
        lines.append(f"| {name} | " + " | ".join(cells) + " |")
    return "\n".join([*lines, "", side_by_side.conditions(len(runs), load)])


if __name__ == "__main__":
    main()
