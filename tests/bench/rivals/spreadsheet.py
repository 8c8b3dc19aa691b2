"""A row of a spreadsheet for each candidate: watts x hours x price, in three ways that people use.

Written in python so that they run beside the others; each is a few cells.
"""

HOURS = 8760


def idle_at_the_average_price(study, bill):
    """Idle watts x 8.76 x (the year's bill / its kWh): what stands on the paper, divided."""
    kwh = {c.id: sum(d.idle for d in c.devices) * HOURS / 1000 for c in study.candidates}
    return kwh, {id: each * bill / sum(study.household_kwh) for id, each in kwh.items()}


def half_busy_at_the_day_price(study, bill):
    """The mean of idle and busy x 8.76 x the price by day (the last band), tax included."""
    kwh = {c.id: sum(mean_of_idle_and_busy(d) for d in c.devices) * HOURS / 1000
           for c in study.candidates}
    return kwh, {id: each * study.bands[-1].price for id, each in kwh.items()}


def mean_of_idle_and_busy(device):
    """Busy is as read at full load; where nobody read it, the most that the device can draw, or
    idle with one of everything in use."""
    everything = sum(increment.first for increment in device.tasks.values())
    busy = device.busy or device.max or device.idle + everything + sum(device.groups.values())
    return (device.idle + busy) / 2


def idle_and_asleep_by_band(study, bill):
    """The careful row: idle and sleep hours, and of each price band its hours x its price."""
    kwh, cost = {}, {}
    prices = hourly_prices(study)
    for candidate in study.candidates:
        watts = [sum(asleep_or_idle(d, hour) for d in candidate.devices) for hour in range(24)]
        kwh[candidate.id] = sum(watts) * HOURS / 24 / 1000
        cost[candidate.id] = sum(w * p for w, p in zip(watts, prices)) * HOURS / 24 / 1000
    return kwh, cost


def asleep_or_idle(device, hour):
    """Watts in an hour of the day; half an hour asleep counts as a half."""
    part = sum(covered(window, hour) for window in device.sleeps)
    return device.sleep * part + device.idle * (1 - part)


def hourly_prices(study):
    """Mean price in each hour of the day: a band for 5 days of 7 and 6 months of 12 counts so."""
    prices = []
    for hour in range(24):
        left, price = 1.0, 0.0
        for band in study.bands:
            when = band.window
            part = left * covered(when, hour) * len(when.days) / 7 * len(when.months) / 12
            price, left = price + part * band.price, left - part
        prices.append(price)
    return prices


def covered(window, hour):
    return sum(
        max(0, min(60, window.end - start) - max(0, window.start - start)) / 60
        for start in (60 * hour, 60 * hour + 1440)
    )
