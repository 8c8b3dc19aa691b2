"""The strongest rival: equal moments of the year are grouped once, then formulas, not rows.

What a good analyst writes who knows the study well. The real clock, cut at the finest edge, and
chances in place of averages. The contract is a price for each kWh, so the year collapses into a
few sums; where the ranges of the study stay open, they are one short formula, which is then
reckoned for all what-ifs at once. Caps would spoil that. Here one is reached seldom, and all are
left out.
"""

import datetime
import itertools
import math
from collections.abc import Callable
from dataclasses import dataclass
from zoneinfo import ZoneInfo

import numpy as np

DAY = datetime.timedelta(days=1)


# --- the year, grouped ---


class Clock:
    """What the clocks show at each step of the year: date (as a number) and minute of the day."""

    def __init__(self, study):
        zone, utc = ZoneInfo(study.zone), datetime.timezone.utc
        first, last = datetime.date(study.year, 1, 1), datetime.date(study.year + 1, 1, 1)
        self.step = math.gcd(60, *(edge for w in all_windows(study) for edge in (w.start, w.end)))
        self.days = [first + DAY * i for i in range(-1, (last - first).days)]
        begin, end = (
            int(datetime.datetime(d.year, 1, 1, tzinfo=zone).timestamp()) // 60
            for d in (first, last)
        )

        def offset(minute):
            at = datetime.datetime.fromtimestamp(int(minute) * 60, utc).astimezone(zone)
            return at.utcoffset() // datetime.timedelta(minutes=1)

        steps = np.arange(begin, end, self.step)
        edges = np.arange(0, steps.size, 1440 // self.step)
        offsets = np.repeat([offset(steps[i]) for i in edges], 1440 // self.step)[: steps.size]
        for i in np.flatnonzero(np.diff(offsets)):  # The clocks change within a stretch.
            stretch = slice(i + 1 - 1440 // self.step, i + 1)
            offsets[stretch] = [offset(t) for t in steps[stretch]]
        local = steps + offsets - (begin + offsets[0])
        self.day, self.minute = local // 1440 + 1, local % 1440

    def holds(self, window, passes):
        """Past midnight the day before decides."""
        passed = np.array([passes(day) for day in self.days])
        today = passed[self.day] & (self.minute >= window.start) & (self.minute < window.end)
        if window.end <= 1440:
            return today
        return today | (passed[self.day - 1] & (self.minute < window.end - 1440))


def all_windows(study):
    sleeps = [w for c in study.candidates for d in c.devices for w in d.sleeps]
    return [thing.window for thing in (*study.uses, *study.bands)] + sleeps


def kwh_and_money(study, clock, which):
    """What one watt weighs in each group: kWh, and money at the price of each moment."""
    price = np.select(
        [clock.holds(band.window, band.window.day_passes) for band in study.bands],
        [band.price for band in study.bands],
    )
    hours = np.bincount(which) * clock.step / 60
    money = np.bincount(which, weights=price) * clock.step / 60
    return np.array([hours, money]) / 1000


class Groups:
    """Distinct sets of uses and sleeps, and what one watt weighs in each: rows of `weigh`."""

    def __init__(self, study, weigh=kwh_and_money):
        clock = Clock(study)
        held = [clock.holds(use.window, use.on_day) for use in study.uses]
        sleeps = [w for c in study.candidates for d in c.devices for w in d.sleeps]
        held += [clock.holds(window, window.day_passes) for window in sleeps]
        code = np.array([1 << i for i in range(len(held))]) @ np.array(held, dtype=np.int64)
        codes, which = np.unique(code, return_inverse=True)
        self.weights = weigh(study, clock, which)
        self.uses = [(codes >> i & 1).astype(bool) for i in range(len(study.uses))]
        self.asleep = {
            id(w): (codes >> (len(study.uses) + i) & 1).astype(bool) for i, w in enumerate(sleeps)
        }

    def sets(self, indices, where):
        """The distinct sets of these uses that hold together, each with its weights."""
        code = sum(((1 << i) * self.uses[i] for i in indices), np.zeros(where.size, np.int64))
        return [
            (tuple(i for i in indices if c >> i & 1), self.weights[:, where & (code == c)].sum(1))
            for c in np.unique(code[where]) if c
        ]


@dataclass
class Plan:
    """What of the groups matters to one device."""

    on: np.ndarray
    asleep: np.ndarray
    tasks: dict  # By workload: sets of its uses.
    groups: dict  # By group of the profile: sets of uses of any of its workloads.
    loads: list  # Sets of uses of the workloads that are a share of full load.
    sets: Callable  # Sets of uses of any workloads, for who asks later.


def plan(study, weigh=kwh_and_money):
    """For each candidate and device: knows no watts and no shares, and holds for all what-ifs."""
    groups = Groups(study, weigh)
    return [[plan_device(study, groups, c, d) for d in c.devices] for c in study.candidates]


def plan_device(study, groups, candidate, device):
    nowhere = np.zeros(groups.weights.shape[1], bool)

    def asleep(one):
        return np.logical_or.reduce([nowhere, *(groups.asleep[id(w)] for w in one.sleeps)])

    def sets(workloads):
        sharing = [d for d in candidate.devices if set(d.tasks) & set(workloads)]
        served = ~np.logical_or.reduce([nowhere, *(asleep(d) for d in sharing)])
        wanted = [i for i, use in enumerate(study.uses) if use.workload in workloads]
        return groups.sets(wanted, served)

    tasks = device.tasks.items()
    return Plan(
        on=groups.weights[:, ~asleep(device)].sum(1),
        asleep=groups.weights[:, asleep(device)].sum(1),
        tasks={w: sets([w]) for w, increment in tasks},
        groups={g: sets([w for w, inc in tasks if inc.group == g]) for g in device.groups},
        loads=sets([w for w, inc in tasks if np.any(inc.load)]),
        sets=sets,
    )


# --- the watts ---


def bent(device, u):
    return 2 * u - u**1.4 if device.curve == "concave" else u


class Chances:
    """Of the uses: expected units, the chance that any of a set is in use, expected bend."""

    def __init__(self, uses):
        self.uses = uses
        self.mean = [use.units * use.share for use in uses]
        self.none = [
            math.prod([1 - use.share] * (use.units if use.independent else 1)) for use in uses
        ]
        self.known = {}

    def any(self, indices):
        if indices not in self.known:
            self.known[indices] = 1 - math.prod(self.none[i] for i in indices)
        return self.known[indices]

    def bend(self, device, indices):
        """Expected f(load) of the curve from idle to busy, over the joint outcomes."""
        loads = [device.tasks[self.uses[i].workload].load for i in indices]
        key = (device.curve, indices, *loads)
        if key not in self.known:
            self.known[key] = 0.0
            for units, chance in self.outcomes(indices):
                u = min(1.0, sum(n * load for n, load in zip(units, loads)))
                self.known[key] = self.known[key] + chance * bent(device, u)
        return self.known[key]

    def outcomes(self, indices):
        """Joint outcomes of a set: the units of each use, and their chance."""
        for units in itertools.product(*(range(self.uses[i].units + 1) for i in indices)):
            chances = [self.chance(self.uses[i], n) for i, n in zip(indices, units)]
            yield units, math.prod(chances)

    @staticmethod
    def chance(use, n):
        p, q, of = use.share, 1 - use.share, use.units
        if use.independent:
            return math.comb(of, n) * math.prod([p] * n) * math.prod([q] * (of - n))
        return p if n == of else q if n == 0 else 0.0


def reckon(study, plans=None):
    """kWh and cost of the year, by candidate."""
    chances = Chances(study.uses)
    energy, cost = {}, {}
    for candidate, devices in zip(study.candidates, plans or plan(study)):
        kwh = money = 0.0
        for device, its_plan in zip(candidate.devices, devices):
            for watts, weight in terms(device, its_plan, chances):
                kwh = kwh + watts * float(weight[0])
                money = money + watts * float(weight[1])
        energy[candidate.id], cost[candidate.id] = kwh, money
    return energy, cost


def terms(device, its_plan, chances):
    """Watts, and what one watt of them weighs in kWh and money a year."""
    yield device.idle, its_plan.on
    yield device.sleep, its_plan.asleep
    for workload, sets in its_plan.tasks.items():
        first, each = device.tasks[workload].first, device.tasks[workload].each
        for uses, weight in sets:
            yield each * sum(chances.mean[i] for i in uses), weight
            yield (first - each) * chances.any(uses), weight
    for group, sets in its_plan.groups.items():
        for uses, weight in sets:
            yield device.groups[group] * chances.any(uses), weight
    for uses, weight in its_plan.loads:
        yield (device.busy - device.idle) * chances.bend(device, uses), weight
