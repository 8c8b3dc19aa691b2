"""The rivals by name, and one of them as a program: `rivals.py KEY STUDY.toml`."""

import importlib
import sys

import study as files

# Those that are programs. Spreadsheet rows are cells; they stand in spreadsheet.py.
NAMES = {
    "hours": "hour by hour, from averages (numpy)",
    "grouped": "grouped by hand (numpy)",
    "minutes": "minute by minute (plain python)",
}


def rival(key):
    return importlib.import_module(key)


def main(key, path):
    energy, cost = rival(key).reckon(files.read(path))
    for candidate in energy:
        print(candidate, energy[candidate], cost[candidate])


if __name__ == "__main__":
    main(*sys.argv[1:])
