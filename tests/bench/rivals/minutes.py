"""Plain python: every minute of the year, every outcome of who is using what at the time."""

import datetime
import itertools
import math
from functools import cache
from zoneinfo import ZoneInfo


def reckon(study):
    """kWh and cost of the year, by candidate."""
    energy = {candidate.id: 0.0 for candidate in study.candidates}
    cost = dict(energy)

    @cache
    def watts(c, in_use, asleep):
        return expected_watts(study, study.candidates[c], in_use, asleep)

    for today, clock in minutes_of_the_year(study):
        in_use = tuple(i for i, start, end in today.uses if start <= clock < end)
        asleep = tuple(i for i, start, end in today.sleeps if start <= clock < end)
        price = next(price for price, start, end in today.bands if start <= clock < end)
        for c, candidate in enumerate(study.candidates):
            kwh = watts(c, in_use, asleep) / 60_000
            energy[candidate.id] += kwh
            cost[candidate.id] += kwh * price
    return energy, cost


# --- the clock ---


class Today:
    """What can hold on a day, as (what, first minute, minute after the last)."""

    def __init__(self, study, day):
        self.uses = [
            (i, *span) for i, use in enumerate(study.uses)
            for span in spans(use.window, use.on_day, day)
        ]
        self.sleeps = [
            (i, *span) for i, window in enumerate(all_sleeps(study))
            for span in spans(window, window.day_passes, day)
        ]
        self.bands = [
            (band.price, *span) for band in study.bands
            for span in spans(band.window, band.window.day_passes, day)
        ]


def spans(window, passes, day):
    """Minutes of the day in which the window holds. Past midnight the day before decides."""
    if window.end > 1440 and passes(day - datetime.timedelta(days=1)):
        yield 0, window.end - 1440
    if passes(day):
        yield window.start, min(window.end, 1440)


def all_sleeps(study):
    devices = [device for candidate in study.candidates for device in candidate.devices]
    return [window for device in devices for window in device.sleeps]


def minutes_of_the_year(study):
    """What can hold today, and the minute that the clock shows, for each minute that passes."""
    zone, utc = ZoneInfo(study.zone), datetime.timezone.utc
    now = datetime.datetime(study.year, 1, 1, tzinfo=zone).astimezone(utc)
    end = datetime.datetime(study.year + 1, 1, 1, tzinfo=zone).astimezone(utc)
    today, date = None, None
    while now < end:
        local = now.astimezone(zone)
        if local.date() != date:
            date = local.date()
            today = Today(study, date)
        yield today, local.hour * 60 + local.minute
        now += datetime.timedelta(minutes=1)


# --- the watts ---


def expected_watts(study, candidate, in_use, asleep):
    sleeps = all_sleeps(study)
    is_on = [not any(sleeps[i] is w for w in d.sleeps for i in asleep) for d in candidate.devices]
    away = {w for d, on in zip(candidate.devices, is_on) if not on for w in d.tasks}
    uses = [study.uses[i] for i in in_use if study.uses[i].workload not in away]
    total = 0.0
    for outcome in itertools.product(*(outcomes(use) for use in uses)):
        probability, units = 1.0, {}
        for use, (n, p) in zip(uses, outcome):
            probability *= p
            units[use.workload] = units.get(use.workload, 0) + n
        for device, on in zip(candidate.devices, is_on):
            total += probability * (watts_of(device, units) if on else device.sleep)
    return total


def outcomes(use):
    """(units in use, probability): all or none, or each unit by itself."""
    if not use.independent:
        return [(0, 1 - use.share), (use.units, use.share)]
    return [
        (n, math.comb(use.units, n) * use.share**n * (1 - use.share) ** (use.units - n))
        for n in range(use.units + 1)
    ]


def watts_of(device, units):
    watts, load, groups = device.idle, 0.0, set()
    for workload, increment in device.tasks.items():
        n = units.get(workload, 0)
        if n == 0:
            continue
        watts += increment.first + increment.each * (n - 1)
        load += n * increment.load
        groups.add(increment.group)
    watts += sum(w for group, w in device.groups.items() if group in groups)
    u = min(1.0, load)
    if u > 0:
        watts += (device.busy - device.idle) * (2 * u - u**1.4 if device.curve == "concave" else u)
    return watts if device.max is None else min(watts, device.max)
