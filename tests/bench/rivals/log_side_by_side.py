"""How fast a year's log is read and summed, side by side in one run and on one core, as ratios to
wattweek: mean watts, kWh with each sample held until the next, mean by hour of the week.

Time is that of the processor, so that it does not matter who else waits for the core.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

import page
import side_by_side

HERE = Path(__file__).parent
WATTWEEK = side_by_side.WATTWEEK
NOTED = "the same with four workloads noted, and what each adds"
COUNT = "`wc -l`: only counts lines"
DUCKDB = "DuckDB, one thread"
PANDAS = "pandas"
COLUMNS = {"time": "time", "memory": "memory"}
SAME = 1e-9


def main():
    options = page.arguments("--year-log", "--folder", "--time", "--node-folder")
    log, activity = str(Path(options.folder, "year.csv")), str(Path(options.folder, "uses.csv"))
    subprocess.run([options.year_log, log, activity], check=True)
    os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})
    commands, versions = contestants(options, log, activity)
    agree(commands)  # It also brings the log into memory.
    runs, load = [], [os.getloadavg()[0]]
    for repetition in range(min(options.repetitions, 3)):
        print(f"repetition {repetition + 1}", file=sys.stderr)
        runs.append(taken(options, commands))
        load.append(os.getloadavg()[0])
    page.deliver("log", report(runs, load, commands, versions), options)


def contestants(options, log, activity):
    fit = [options.wattweek, "fit", log, "--zone", "UTC", "--format", "json"]
    commands = {WATTWEEK: fit, NOTED: [*fit, "--activity", activity], COUNT: ["wc", "-l", log]}
    rivals = {
        DUCKDB: (["node", str(HERE / "duckdb_log.mjs"), options.node_folder],
                 f"npm install --prefix {options.node_folder} @duckdb/node-api"),
        PANDAS: ([sys.executable, str(HERE / "pandas_log.py")], "Debian: python3-pandas"),
    }
    versions = []
    for who, (command, source) in rivals.items():
        try:
            asked = subprocess.run([*command, "--has"], capture_output=True, text=True)
            is_there, version = asked.returncode == 0, asked.stdout.strip()
        except FileNotFoundError:
            is_there = False
        if is_there:
            commands[who] = [*command, log]
            versions.append(version)
        else:
            print(f"MISSING, left out: {who} ({source})", file=sys.stderr)
    return commands, versions


def agree(commands):
    """All reckon the same; a rival that reckons something else is no rival."""
    found = {who: json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
             for who, command in commands.items() if who != COUNT}
    ours = found[WATTWEEK]
    for who, theirs in found.items():
        pairs = [(theirs[key], ours[key]) for key in ("mean_w", "energy_kwh")]
        pairs += list(zip(theirs["week"], ours["week"], strict=True))
        if any(abs(a - b) > SAME * abs(b) for a, b in pairs):
            raise SystemExit(f"{who} reckons something else than {WATTWEEK}")


def taken(options, commands):
    """(what, who) -> seconds of processor time and kilobytes of one repetition."""
    all_taken = {}
    for who, command in commands.items():
        ran = subprocess.run([options.time, "-f", "%U %S %M", *command], check=True,
                             stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
        user, system, kilobytes = ran.stderr.split()[-3:]
        all_taken["time", who] = float(user) + float(system)
        all_taken["memory", who] = int(kilobytes)
    return all_taken


def report(runs, load, commands, versions):
    lines = ["| | " + " | ".join(COLUMNS.values()) + " |", "|---|" + "---|" * len(COLUMNS)]
    lines.append(f"| {WATTWEEK} |" + " 1 |" * len(COLUMNS))
    for who in commands:
        if who != WATTWEEK:
            cells = [side_by_side.ratio(runs, what, who) for what in COLUMNS]
            lines.append(f"| {who} | " + " | ".join(cells) + " |")
    conditions = side_by_side.conditions(len(runs), load)
    return "\n".join([*lines, "", conditions.removesuffix(".") + "; " + ", ".join(versions) + "."])


if __name__ == "__main__":
    main()
