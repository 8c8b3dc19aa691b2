"""How fast wattweek and its rivals are, side by side in one run, as ratios to wattweek.

Each repetition runs every contestant once, one after the other, so that whatever else the machine
does at the time slows all of them alike. A ratio is taken within each repetition; printed are the
median, and the least and greatest in brackets.
"""

import json
import os
import platform
import statistics
import subprocess
import sys
import time
from pathlib import Path

import numpy as np

import formula
import grouped
import hours
import page
import rivals
import study as files

HERE = Path(__file__).parent
WATTWEEK = "wattweek"
IMPORT = "python that only imports numpy"
WHAT_IFS = {"hours": 20, "grouped": 100_000}


def main():
    options = page.arguments("--bench", "--time")
    path, load = options.study, [os.getloadavg()[0]]
    held = memory(options, path)  # First: it also brings files into memory and compiles modules.
    runs = []
    for repetition in range(options.repetitions):
        print(f"repetition {repetition + 1} of {options.repetitions}", file=sys.stderr)
        timings = whole(options, path) | alone(options, path) | what_ifs(path)
        runs.append(timings | held)
        load.append(os.getloadavg()[0])
    page.deliver("speed", report(runs, load), options)


# --- (what, who) -> kilobytes, or the seconds of one repetition ---


def programs(options, path):
    commands = {
        WATTWEEK: [options.wattweek, "compare", path, "--format", "json"],
        IMPORT: [sys.executable, "-c", "import numpy"],
    }
    for key in rivals.NAMES:
        commands[key] = [sys.executable, str(HERE / "rivals.py"), key, path]
    return commands


def memory(options, path):
    """The most held in memory, as the program `time` says: seen from here it would include us."""
    held = {}
    for who, command in programs(options, path).items():
        ran = subprocess.run([options.time, "-f", "%M", *command], check=True,
                             stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        held["memory", who] = int(ran.stderr.split()[-1])
    return held


def whole(options, path):
    def run(command):
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL)

    return {("whole", who): timed(lambda: run(command), rounds=20 if who == WATTWEEK else 1)
            for who, command in programs(options, path).items()}


def alone(options, path):
    """Files read, python started: from the study to kWh and money of all candidates."""
    command = [options.bench, "--benchmark_filter=reckon.*ostrawick", "--benchmark_format=json",
               "--benchmark_min_time=0.3"]
    found = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
    bench = {case["name"]: case["real_time"] / 1e6 for case in found["benchmarks"]}
    taken = {("alone", WATTWEEK): bench["reckon_ostrawick"],
             ("what-if", WATTWEEK): bench["reckon_a_what_if_of_ostrawick"]}
    study = files.read(path)
    for key in rivals.NAMES:
        rounds = 1 if key == "minutes" else 10
        taken["alone", key] = timed(lambda: rivals.rival(key).reckon(study), rounds)
    taken["what-if", "minutes"] = taken["alone", "minutes"]  # Each one is the whole year again.
    return taken


def timed(work, rounds=1):
    """Mean seconds of a round, as the benchmark of wattweek also takes a mean."""
    begin = time.perf_counter()
    for _ in range(rounds):
        work()
    return (time.perf_counter() - begin) / rounds


def what_ifs(path):
    """One more what-if: other watts, shares and minutes, drawn from the ranges of the study."""
    rows = hours.Rows(files.read(path))
    random = np.random.default_rng(1)
    studies = [
        files.read(path, lambda key, low, high: random.uniform(low, high))
        for _ in range(WHAT_IFS["hours"])
    ]
    by_hours = timed(lambda: [hours.reckon(study, rows) for study in studies])

    figures = formula.OpenFigures()
    still_open = files.read(path, figures)
    plans = grouped.plan(files.read(path))
    formulas = [f for each in grouped.reckon(still_open, plans) for f in each.values()]
    draws = figures.draw(WHAT_IFS["grouped"], seed=1)
    by_formula = timed(lambda: formula.at(formulas, draws), rounds=10)
    return {("what-if", "hours"): by_hours / WHAT_IFS["hours"],
            ("what-if", "grouped"): by_formula / WHAT_IFS["grouped"]}


# --- the table ---

COLUMNS = {
    "whole": "whole program",
    "alone": "reckoning alone",
    "what-if": "one more what-if",
    "memory": "memory",
}


def report(runs, load):
    lines = ["| | " + " | ".join(COLUMNS.values()) + " |", "|---|" + "---|" * len(COLUMNS)]
    lines.append(f"| {WATTWEEK} |" + " 1 |" * len(COLUMNS))
    for who, name in {IMPORT: IMPORT, **rivals.NAMES}.items():
        cells = [ratio(runs, what, who) for what in COLUMNS]
        lines.append(f"| {name} | " + " | ".join(cells) + " |")
    lines += ["", conditions(len(runs), load)]
    return "\n".join(lines)


def ratio(runs, what, who):
    if (what, who) not in runs[0]:
        return ""
    ratios = [taken[what, who] / taken[what, WATTWEEK] for taken in runs]
    middle, least, most = statistics.median(ratios), min(ratios), max(ratios)
    if what == "memory":
        return short(middle)
    if most < 0.95:
        return f"1/{short(1 / middle)} (1/{short(1 / least)} to 1/{short(1 / most)})"
    return f"{short(middle)} ({short(least)} to {short(most)})"


def short(number):
    """Two digits that count: 3.4, 34, 340."""
    return f"{float(f'{number:.2g}'):.1f}" if number < 10 else f"{float(f'{number:.2g}'):.0f}"


def conditions(repetitions, load):
    return (
        f"Measured on {os.cpu_count()} cores of a shared {platform.machine()} server, "
        f"{repetitions} repetitions in one run,\nload average {min(load):.1f} to {max(load):.1f}; "
        f"python {platform.python_version()}, numpy {np.__version__}."
    )


if __name__ == "__main__":
    main()
