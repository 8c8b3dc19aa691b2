"""A grid of prices and use under a whole contract, in the two ways that people write it.

`Grid`: equal moments are grouped and all points reckoned at once, as a good analyst would. Chances
in place of averages. The cap is exact: only outcomes above it are looked at one by one. Energies are
reckoned once for each value of use. Bills go over the grid in pieces that stay in the cache: all
months at all points, or with `sorts_months`, which one has to think of, only those whose minimum
binds at some points of the piece and not at others.

`Naive`: a row for each hour, from averages, and one point after the other.
"""

import dataclasses

import numpy as np

import contract
import grouped
import hours
import minutes
import study as files

PRICES_AT_A_TIME = 16  # The fastest here: with 1000 values of use an array takes 128 KiB.


class Scaled:
    """A study under a whole contract; `at` is the study with its shares times a factor."""

    def __init__(self, study_path, contract_path):
        self.contract = contract.read(contract_path)
        self.study = dataclasses.replace(files.read(study_path), bands=self.contract.bands)
        self.lowest = files.read(study_path, lambda key, low, high: low).uses
        self.highest = files.read(study_path, lambda key, low, high: high).uses

    def at(self, factor):
        """Of a range each end is at most 1."""
        uses = [
            dataclasses.replace(low, share=(np.minimum(1, low.share * factor) +
                                            np.minimum(1, high.share * factor)) / 2)
            for low, high in zip(self.lowest, self.highest)
        ]
        return dataclasses.replace(self.study, uses=uses)


# --- all points at once ---


class Grid:
    """By candidate: kWh of the year [use], and what bands and blocks come to at today's prices
    [month, use]; `without` any candidate [month]."""

    def __init__(self, scaled, use):
        self.study, self.contract = scaled.study, scaled.contract
        factors = np.append(use, 1.0)  # The last one is the study as it is written.
        study = scaled.at(factors)
        by_cell = Cells(study)
        plans = grouped.plan(study, by_cell)
        chances = grouped.Chances(study.uses)
        kwh = {c.id: candidate_kwh(c, devices, chances, factors.size).reshape(12, -1, factors.size)
               for c, devices in zip(study.candidates, plans)}
        own = np.array(study.household_kwh) - kwh[study.includes][:, :, -1].sum(1)
        own = own[:, None, None] * by_cell.share[:, :, None]
        self.kwh = {c: each[:, :, :-1].sum((0, 1)) for c, each in kwh.items()}
        self.charges = {c: self.contract.charges(own + each[:, :, :-1]) for c, each in kwh.items()}
        self.without = self.contract.charges(own)[:, 0]

    def pieces(self, prices, sorts_months):
        """(kWh, cost, present cost, best) of so many prices by all values of use; the arrays are
        used again for the next piece."""
        room = Room(len(self.charges), PRICES_AT_A_TIME, next(iter(self.kwh.values())).size)
        outlay = [self.study.outlay(c) for c in self.study.candidates]
        yearly = self.study.worth_of_yearly()
        floor = self.contract.floor(self.study.year)
        for first in range(0, prices.size, PRICES_AT_A_TIME):
            x = prices[first : first + PRICES_AT_A_TIME, None]
            before = np.maximum(floor, x * self.without).sum(1, keepdims=True)
            cost, present = room.cost[:, : x.size], room.present[:, : x.size]
            for c, charges in enumerate(self.charges.values()):
                bills(charges, floor, x, room.month[: x.size], cost[c], sorts_months)
                cost[c] -= before
                cost[c] *= 1 + self.contract.tax
                np.multiply(cost[c], yearly, out=present[c])
                present[c] += outlay[c]
            yield self.kwh, cost, present, lowest(present)


class Cells:
    """For `grouped`: kWh of one watt in each month and band, by group."""

    def __init__(self, study):
        self.share = None

    def __call__(self, study, clock, which):
        band = np.select([clock.holds(b.window, b.window.day_passes) for b in study.bands],
                         np.arange(len(study.bands)))
        month = np.array([day.month - 1 for day in clock.days])[clock.day]
        cell, groups = month * len(study.bands) + band, which.max() + 1
        steps = np.bincount(cell * groups + which, minlength=12 * len(study.bands) * groups)
        in_cell = steps.reshape(12, len(study.bands), groups).sum(2)
        self.share = in_cell / in_cell.sum(1, keepdims=True)  # Of the month's hours.
        return steps.reshape(-1, groups) * clock.step / 60 / 1000


class Room:
    """The arrays of a piece."""

    def __init__(self, candidates, prices, points):
        self.month = np.empty((prices, points))
        self.cost = np.empty((candidates, prices, points))
        self.present = np.empty((candidates, prices, points))


def candidate_kwh(candidate, plans, chances, points):
    """[cell, use]"""
    watts, weights = [], []
    for device, plan in zip(candidate.devices, plans):
        terms = list(grouped.terms(device, plan, chances))
        if device.max is not None:
            terms += [(-above_cap(device, uses, chances), weight)
                      for uses, weight in plan.sets(list(device.tasks))]
        watts += [np.broadcast_to(each, points) for each, weight in terms if np.any(each)]
        weights += [weight for each, weight in terms if np.any(each)]
    return np.array(weights).T @ np.array(watts)


def above_cap(device, indices, chances):
    """Expected watts that the cap takes away while these uses hold. Branches that cannot reach it
    are left out."""
    uncapped = dataclasses.replace(device, max=None)
    uses = [chances.uses[i] for i in indices]

    def watts(units):
        by_workload = {}
        for use, n in zip(uses, units):
            by_workload[use.workload] = by_workload.get(use.workload, 0) + n
        return minutes.watts_of(uncapped, by_workload)

    def expected(units, chance):
        left = uses[len(units) :]
        if watts((*units, *(use.units for use in left))) <= device.max:
            return 0.0
        if not left:
            return chance * (watts(units) - device.max)
        use = left[0]
        possible = range(use.units + 1) if use.independent else (0, use.units)
        return sum(expected((*units, n), chance * chances.chance(use, n)) for n in possible)

    return expected((), 1.0)


def bills(charges, floor, x, month, total, sorts_months):
    """Fills `total` with the sum over months of max(floor, x charges)."""
    above = below = np.zeros(12, bool)
    if sorts_months:
        above = x[0] * charges.min(1) >= floor
        below = x[-1] * charges.max(1) <= floor
    np.multiply(x, charges[above].sum(0), out=total)
    total += floor[below].sum()
    for m in np.flatnonzero(~(above | below)):
        np.multiply(x, charges[m], out=month)
        np.maximum(month, floor[m], out=month)
        total += month


def lowest(present):
    """Which candidate has the lowest present cost."""
    best, least = np.zeros(present.shape[1:], np.int8), present[0]
    for c in range(1, len(present)):
        best[present[c] < least] = c
        least = np.minimum(least, present[c])
    return best


# --- one point after the other ---


class Naive:
    def __init__(self, scaled):
        self.scaled, self.contract = scaled, scaled.contract
        study = scaled.at(1.0)
        self.rows = hours.Rows(study)
        self.floor = self.contract.floor(study.year)
        metered = {c.id: self.by_month(kwh) for c, kwh in hours.kwh_by_hour(study, self.rows)}
        self.own = np.array(study.household_kwh) - metered[study.includes]
        self.own_amount = self.own * self.by_month(self.rows.price) / self.by_month(1.0)

    def by_month(self, each):
        weights = np.broadcast_to(each, self.rows.month.shape)
        return np.bincount(self.rows.month, weights=weights)[1:]

    def at(self, price, use):
        """kWh, cost and present cost of each candidate, and which is the best."""
        study = self.scaled.at(use)
        before = self.bills(price, 0, 0)
        energy, cost, present = [], [], []
        for candidate, kwh in hours.kwh_by_hour(study, self.rows):
            with_it = self.bills(price, self.by_month(kwh), self.by_month(kwh * self.rows.price))
            energy.append(kwh.sum())
            cost.append((with_it - before).sum() * (1 + self.contract.tax))
            present.append(study.outlay(candidate) + cost[-1] * study.worth_of_yearly())
        return energy, cost, present, int(np.argmin(present))

    def bills(self, price, kwh, amount):
        """Before standing charge and tax, by month."""
        charge = self.own_amount + amount + self.contract.blocks_amount(self.own + kwh)
        return np.maximum(self.floor, price * charge)
