"""What each rival is off by in a year, in kWh and money. A test holds the page to it."""

import json
import subprocess

import grouped
import hours
import page
import rivals
import spreadsheet
import study as files

SPREADSHEET = {
    "spreadsheet: idle watts, average price": spreadsheet.idle_at_the_average_price,
    "spreadsheet: half busy, day price": spreadsheet.half_busy_at_the_day_price,
    "spreadsheet: idle and asleep, band by band": spreadsheet.idle_and_asleep_by_band,
}


def main():
    options = page.arguments()
    study, results = files.read(options.study), wattweek(options)
    right_kwh = {c["id"]: c["energy_kwh"] for c in results["candidates"]}
    right = {c["id"]: c["cost"] for c in results["candidates"]}
    paper_bill = sum(bill["total"] for bill in results["bills"]["with"][study.includes])

    rows = {name: row(study, paper_bill) for name, row in SPREADSHEET.items()}
    rows |= {name: rivals.rival(key).reckon(study) for key, name in rivals.NAMES.items()}
    head = [f"{c} {what}" for what in ("kWh", "EUR") for c in right]
    lines = [cells("", *head, f"best over {study.years} years"), "|---" * 8 + "|"]
    lines.append(cells("wattweek", *amounts(right_kwh, 1), *amounts(right, 2), best(study, right)))
    for name, (kwh, cost) in rows.items():
        lines.append(cells(name, *off(kwh, right_kwh, 1), *off(cost, right, 2), best(study, cost)))
        if name == rivals.NAMES["hours"]:
            lines += parts_of_hours(study, kwh, cost, right_kwh, right)
    check_claims(study, {name: cost for name, (_, cost) in rows.items()}, right)
    page.deliver("money", "\n".join(lines), options)


def check_claims(study, costs, right):
    """What the page says in words about these figures."""

    def worst(key):
        return max(abs(costs[rivals.NAMES[key]][c] - right[c]) for c in right)

    one_watt_all_year = grouped.Groups(study).weights[1].sum()
    claims = {
        "the hour script errs by less than one idle watt costs": worst("hours") < one_watt_all_year,
        "the grouped script errs by less than a cent": worst("grouped") < 0.01,
        "minute by minute there is no error": worst("minutes") < 1e-6,
        "all find the same best machine": all(
            best(study, cost).split()[0] == best(study, right).split()[0] for cost in costs.values()
        ),
    }
    false = [claim for claim, holds in claims.items() if not holds]
    if false:
        raise SystemExit(f"no longer true, change the page and this check: {false}")


def wattweek(options):
    command = [options.wattweek, "compare", options.study, "--format", "json"]
    return json.loads(subprocess.run(command, check=True, capture_output=True).stdout)


def parts_of_hours(study, kwh, cost, right_kwh, right):
    """The same averages on the right clock: what they err by alone; the rest is the clock."""
    on_clock_kwh, on_clock = averages_on_the_right_clock(study)
    yield cells("- of it averages", *off(on_clock_kwh, right_kwh, 1), *off(on_clock, right, 2), "")
    yield cells("- of it clock and dates", *off(kwh, on_clock_kwh, 1), *off(cost, on_clock, 2), "")


def averages_on_the_right_clock(study):
    groups = grouped.Groups(study)
    units = {use.workload: 0.0 for use in study.uses}
    for use, holds in zip(study.uses, groups.uses):
        units[use.workload] = units[use.workload] + use.units * use.share * holds
    sums = {}
    for candidate in study.candidates:
        sleeps = [[groups.asleep[id(w)] * 1.0 for w in d.sleeps] for d in candidate.devices]
        watts = hours.candidate_watts(candidate, sleeps, units)
        sums[candidate.id] = (groups.weights * watts).sum(1)
    return {c: each[0] for c, each in sums.items()}, {c: each[1] for c, each in sums.items()}


def best(study, cost):
    """The least present cost, and by how much it leads: purchase, electricity and later costs
    less resale, discounted."""
    first, second, *_ = sorted(
        (study.outlay(c) + cost[c.id] * study.worth_of_yearly(), c.id) for c in study.candidates
    )
    return f"{first[1]} by {second[0] - first[0]:.0f} EUR"


def cells(*texts):
    return "| " + " | ".join(texts) + " |"


def amounts(values, digits):
    return [f"{value:.{digits}f}" for value in values.values()]


def off(values, right, digits):
    return [difference(values[c] - right[c], digits) for c in right]


def difference(value, digits):
    """Signed; 0 is less than a millionth, the tolerance of the whole project."""
    if abs(value) < 1e-6:
        return "0"
    if abs(value) < 0.5 * 10**-digits:
        return f"< {10**-digits}"
    return f"{value:+.{digits}f}"


if __name__ == "__main__":
    main()
