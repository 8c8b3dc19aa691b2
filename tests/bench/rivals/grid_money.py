"""Holds the grid of `grid.py` to that of `wattweek whatif`: all figures of all points."""

import json
import shutil
import subprocess
import tempfile
from pathlib import Path

import numpy as np

import grid
import grouped
import page

PRICES = (0.25, 2, 8)  # Lowest, highest, how many.
USES = (0, 2, 7)


def main():
    options = page.arguments("--contract")
    scaled = grid.Scaled(options.study, options.contract)
    points = grid.Grid(scaled, np.linspace(*USES))
    check_claims(scaled, points)
    rows = whatif(options)["rows"]
    for sorts_months in (False, True):
        found = [whole(piece) for piece in points.pieces(np.linspace(*PRICES), sorts_months)]
        compare(np.concatenate(found, axis=1), rows)
    print(f"{len(rows)} points agree")


def whole(piece):
    """[kWh, cost, present cost, best; price, use; candidate]"""
    kwh, cost, present, best = piece
    kwh = np.broadcast_to(np.array(list(kwh.values()))[:, None], cost.shape)
    best = np.broadcast_to(best, cost.shape)
    return np.moveaxis(np.array([kwh, cost, present, best]), 1, 3)


def whatif(options):
    """Of a copy of the study that has the contract in place of its own."""
    with tempfile.TemporaryDirectory() as folder:
        for file in Path(options.study).parent.glob("*.toml"):
            shutil.copy(file, folder)
        shutil.copy(options.contract, Path(folder) / "ostrawick-tariff.toml")
        command = [options.wattweek, "whatif", str(Path(folder) / Path(options.study).name),
                   "--format", "json"]
        for factor, (low, high, count) in {"price": PRICES, "use": USES}.items():
            command += ["--vary", f"{factor}={low}..{high}:{count}"]
        return json.loads(subprocess.run(command, check=True, capture_output=True).stdout)


def compare(found, rows):
    ids = [each["id"] for each in rows[0]["candidates"]]
    keys = ("energy_kwh", "cost", "present_cost")
    right = [[[each[key] for each in row["candidates"]] for row in rows] for key in keys]
    right.append([[ids.index(row["best"])] * len(ids) for row in rows])
    found = found.reshape(4, len(rows), len(ids))
    off = ~np.isclose(found, right, rtol=1e-9, atol=1e-9)
    for what, row, c in np.argwhere(off)[:10]:
        name = (*keys, "best")[what]
        print(rows[row]["at"], ids[c], name, found[what, row, c], right[what][row][c])
    if off.any():
        raise SystemExit(f"{off.sum()} figures are off")


def check_claims(scaled, points):
    """That the contract and the cap are what the page says they are."""
    floor = points.contract.floor(points.study.year)
    uncapped, _ = grouped.reckon(scaled.at(2.0))
    alone = int((points.without < floor).sum())
    with_rack = int((points.charges["rack"][:, -1] < floor).sum())
    claims = {
        "the house alone is below the minimum in five months, with the rack server in fewer":
            with_rack < alone == 5,
        "the cap of the palm-size box is reached": points.kwh["palm"][-1] < uncapped["palm"] - 1e-3,
    }
    false = [claim for claim, holds in claims.items() if not holds]
    if false:
        raise SystemExit(f"no longer true, change the page and this check: {false}")


if __name__ == "__main__":
    main()
