"""A whole contract: bands, blocks, standing charge, minimum bill, tax; by the month."""

import calendar
import tomllib
from dataclasses import dataclass
from pathlib import Path

import numpy as np

import study as files


@dataclass
class Contract:
    bands: list[files.Band]  # Prices before tax.
    blocks: list[tuple[float, float]]  # Up to so many kWh a month (the last: inf), price.
    standing: float  # For each day.
    minimum: float  # For each month.
    tax: float

    def charges(self, kwh):
        """What bands and blocks come to, by month: [month, band, ...]."""
        prices = np.array([band.price for band in self.bands])
        return np.tensordot(prices, kwh, (0, 1)) + self.blocks_amount(kwh.sum(1))

    def blocks_amount(self, kwh):
        amount, below = 0.0, 0.0
        for up_to, price in self.blocks:
            amount = amount + price * (np.clip(kwh, below, up_to) - below)
            below = up_to
        return amount

    def floor(self, year):
        """By month: what bands and blocks come to where the minimum begins to bind."""
        days = [calendar.monthrange(year, month)[1] for month in range(1, 13)]
        return self.minimum - self.standing * np.array(days)


def read(path):
    table = tomllib.loads(Path(path).read_text())
    files.only(table, "name", "currency", "tax", "standing_per_day", "minimum_per_month", "band",
               "block")
    for band in table["band"]:
        files.only(band, "name", "price", *files.WINDOW)
    for block in table["block"]:
        files.only(block, "up_to", "price")
    return Contract(
        bands=[files.Band(files.window(band), band["price"]) for band in table["band"]],
        blocks=[(block.get("up_to", np.inf), block["price"]) for block in table["block"]],
        standing=table["standing_per_day"],
        minimum=table["minimum_per_month"],
        tax=table["tax"],
    )
