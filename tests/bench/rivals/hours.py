"""A script with a row for each hour of the year, as most people write it first.

Each row has the expected units in use; watts are reckoned from these averages. The clock is that
of a year without clock changes, and each row is judged by its own date.
"""

import numpy as np


class Rows:
    """The 8760 hours, and what part of each lies in a use, a rest or a price band."""

    def __init__(self, study):
        first = np.datetime64(f"{study.year}-01-01T00", "h")
        self.hours = np.arange(first, np.datetime64(f"{study.year + 1}-01-01T00", "h"))
        self.dates = self.hours.astype("datetime64[D]")
        self.weekday = (self.dates.astype(int) + 3) % 7  # The epoch was a Thursday.
        self.month = self.hours.astype("datetime64[M]").astype(int) % 12 + 1
        self.uses = [self.part(use.window) * ~self.within(use.away) for use in study.uses]
        self.sleeps = [
            [[self.part(window) for window in device.sleeps] for device in candidate.devices]
            for candidate in study.candidates
        ]
        self.price = np.full(self.hours.size, np.nan)
        for band in study.bands:
            free = np.isnan(self.price) & (self.part(band.window) == 1)
            self.price[free] = band.price

    def part(self, window):
        start = 60 * (self.hours - self.dates).astype(int)
        part = sum(
            np.clip(np.minimum(start + 60, window.end - shift) -
                    np.maximum(start, window.start - shift), 0, 60) / 60
            for shift in (0, 1440)
        )
        holds = np.isin(self.weekday, list(window.days)) & np.isin(self.month, list(window.months))
        return part * holds * self.within([window.dates] if window.dates else [ALWAYS])

    def within(self, spans):
        inside = np.zeros(self.hours.size, bool)
        for first, last in spans:
            inside |= (self.dates >= np.datetime64(first)) & (self.dates <= np.datetime64(last))
        return inside


ALWAYS = ("0001-01-01", "9999-12-31")


def reckon(study, rows=None):
    """kWh and cost of the year, by candidate."""
    rows = rows or Rows(study)
    energy, cost = {}, {}
    for candidate, kwh in kwh_by_hour(study, rows):
        energy[candidate.id] = kwh.sum()
        cost[candidate.id] = kwh @ rows.price
    return energy, cost


def kwh_by_hour(study, rows):
    """Of each candidate."""
    units = {}
    for use, part in zip(study.uses, rows.uses):
        units[use.workload] = units.get(use.workload, 0) + use.units * use.share * part
    for candidate, sleeps in zip(study.candidates, rows.sleeps):
        yield candidate, candidate_watts(candidate, sleeps, units) / 1000


def candidate_watts(candidate, sleeps, units):
    """By hour. What a sleeping device takes part in is not in use."""
    units, asleep = dict(units), [sum(parts) if parts else 0.0 for parts in sleeps]
    for device, part in zip(candidate.devices, asleep):
        for workload in device.tasks:
            units[workload] = units[workload] * (1 - part)
    return sum(
        device_watts(device, units) * (1 - part) + device.sleep * part
        for device, part in zip(candidate.devices, asleep)
    )


def device_watts(device, units):
    watts, load, quiet = device.idle, 0.0, {}
    for workload, increment in device.tasks.items():
        n = units[workload]
        watts = watts + increment.first * np.minimum(n, 1) + increment.each * np.maximum(n - 1, 0)
        load = load + n * increment.load
        if increment.group:
            none = 1 - np.minimum(n, 1)
            quiet[increment.group] = quiet.get(increment.group, 1) * none
    for group, group_watts in device.groups.items():
        watts = watts + group_watts * (1 - quiet.get(group, 1))
    if device.busy is not None:
        u = np.minimum(load, 1)
        bent = 2 * u - u**1.4 if device.curve == "concave" else u
        watts = watts + (device.busy - device.idle) * bent
    return watts if device.max is None else np.minimum(watts, device.max)
