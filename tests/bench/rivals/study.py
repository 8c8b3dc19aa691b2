"""A study, its tariff and its profiles, read from the same TOML files as wattweek reads.

Only what the demo study Ostrawick uses is understood; at any other key the reader stops, so that
no rival is ever blamed for a key that it was never taught.
"""

import datetime
import tomllib
from dataclasses import dataclass
from pathlib import Path

DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"]


@dataclass
class Window:
    days: set[int]  # Monday is 0.
    months: set[int]  # January is 1.
    dates: tuple[datetime.date, datetime.date] | None
    start: int  # Minute of the day.
    end: int  # Above 1440 where the hours cross midnight.

    def day_passes(self, day: datetime.date) -> bool:
        return (
            day.weekday() in self.days
            and day.month in self.months
            and (self.dates is None or self.dates[0] <= day <= self.dates[1])
        )


@dataclass
class Use:
    workload: str
    window: Window
    units: int
    share: float
    independent: bool
    away: list[tuple[datetime.date, datetime.date]]

    def on_day(self, day: datetime.date) -> bool:
        gone = any(first <= day <= last for first, last in self.away)
        return self.window.day_passes(day) and not gone


@dataclass
class Increment:
    first: float = 0.0
    each: float = 0.0
    load: float = 0.0  # Fraction of full load for each unit.
    group: str | None = None


@dataclass
class Device:
    idle: float
    off: float
    sleep: float
    busy: float | None
    max: float | None
    curve: str
    groups: dict[str, float]
    tasks: dict[str, Increment]  # By workload: what it runs or assists.
    sleeps: list[Window]


@dataclass
class Candidate:
    id: str
    devices: list[Device]
    purchase: float
    resale: float
    later: list[tuple[int, float]]  # Year and cost.


@dataclass
class Band:
    window: Window
    price: float  # For each kWh, tax included.


@dataclass
class Study:
    zone: str
    year: int
    uses: list[Use]
    candidates: list[Candidate]
    bands: list[Band]
    standing: float  # For each day, tax included.
    household_kwh: list[float]  # By month, the baseline's own kWh in it.
    includes: str
    years: int
    discount_rate: float
    price_rise: float

    def worth_of_yearly(self):
        """Present worth of 1 a year for electricity, over the horizon."""
        d, g = 1 + self.discount_rate, 1 + self.price_rise
        return sum(g ** (year - 1) / d**year for year in range(1, self.years + 1))

    def outlay(self, candidate):
        """Purchase and later costs less resale, discounted."""
        d = 1 + self.discount_rate
        later = sum(cost / d**year for year, cost in candidate.later)
        return candidate.purchase + later - candidate.resale / d**self.years


def midpoint(key, low, high):
    return (low + high) / 2


def only(table, *keys):
    unknown = set(table) - set(keys)
    if unknown:
        raise SystemExit(f"the rivals do not know {sorted(unknown)}; teach them, or leave it out")


def spans(text, names):
    chosen = set()
    for part in (text or f"{names[0]}-{names[-1]}").split(","):
        first, _, last = part.strip().partition("-")
        at, end = names.index(first), names.index(last or first)
        chosen |= {(at + i) % len(names) for i in range((end - at) % len(names) + 1)}
    return chosen


def window(table):
    start, end = [
        int(clock[:2]) * 60 + int(clock[3:])
        for clock in table.get("hours", "00:00-24:00").split("-")
    ]
    return Window(
        days=spans(table.get("days"), DAYS),
        months={month + 1 for month in spans(table.get("months"), MONTHS)},
        dates=dates(table["dates"]) if "dates" in table else None,
        start=start,
        end=end if end > start else end + 1440,
    )


def dates(text):
    first, last = text.split("..")
    return datetime.date.fromisoformat(first), datetime.date.fromisoformat(last)


WINDOW = ("days", "hours", "months", "dates")


class Reader:
    """`pick(key, low, high)` settles each range: its midpoint, or an array of draws."""

    def __init__(self, path, pick=midpoint):
        self.folder, self.pick = Path(path).parent, pick
        self.root = tomllib.loads(Path(path).read_text())

    def number(self, table, key, default=None):
        value = table.get(key, default)
        return self.pick(key, *value) if isinstance(value, list) else value

    def study(self):
        root = self.root
        only(root, "title", "time_zone", "start", "tariff", "baseline", "household", "carbon",
             "finance", "workload", "away", "candidate")
        if root["start"].month != 1:
            raise SystemExit("the rivals reckon a calendar year")
        bands, standing = self.tariff(root["tariff"])
        only(root["household"], "kwh_per_month", "includes")
        only(root["finance"], "years", "discount_rate", "price_rise")
        finance = root["finance"]
        return Study(
            zone=root["time_zone"],
            year=root["start"].year,
            uses=[use for workload in root["workload"] for use in self.uses(workload)],
            candidates=[self.candidate(each) for each in root["candidate"]],
            bands=bands,
            standing=standing,
            household_kwh=root["household"]["kwh_per_month"],
            includes=root["household"]["includes"],
            years=finance["years"],
            discount_rate=self.number(finance, "discount_rate"),
            price_rise=self.number(finance, "price_rise"),
        )

    def tariff(self, name):
        table = tomllib.loads((self.folder / name).read_text())
        only(table, "name", "currency", "tax", "standing_per_day", "band")
        tax = 1 + self.number(table, "tax")
        bands = []
        for band in table["band"]:
            only(band, "name", "price", *WINDOW)
            bands.append(Band(window(band), self.number(band, "price") * tax))
        return bands, self.number(table, "standing_per_day") * tax

    def uses(self, workload):
        only(workload, "id", "name", "unit", "compute", "use")
        away = []
        for entry in self.root.get("away", []):
            only(entry, "dates", "workloads")
            if workload["id"] in entry["workloads"]:
                away.append(dates(entry["dates"]))
        for use in workload["use"]:
            only(use, "units", "share", "minutes", "pattern", *WINDOW)
            when = window(use)
            share = self.number(use, "share", 1)
            if "minutes" in use:
                share = self.number(use, "minutes") / (when.end - when.start)
            independent = use.get("pattern") == "independent"
            yield Use(workload["id"], when, use.get("units", 1), share, independent, away)

    def candidate(self, table):
        only(table, "id", "name", "purchase", "resale", "later", "device")
        own = {w for device in table["device"] for w in device.get("runs", [])}
        rest = [w["id"] for w in self.root["workload"] if w["id"] not in own]
        devices = []
        for entry in table["device"]:
            only(entry, "profile", "runs", "assists", "rest")
            runs = entry.get("runs", rest)
            if "runs" not in entry:
                rest = []  # The first device without "runs" has run all that was left.
            devices.append(self.device(entry, [*runs, *entry.get("assists", [])]))
        later = [(each["year"], self.number(each, "cost")) for each in table.get("later", [])]
        return Candidate(table["id"], devices, self.number(table, "purchase", 0),
                         self.number(table, "resale", 0), later)

    def device(self, entry, workloads):
        profile = tomllib.loads((self.folder / entry["profile"]).read_text())
        only(profile, "name", "capacity", "watts", "groups", "increments")
        watts = profile["watts"]
        only(watts, "off", "sleep", "idle", "busy", "max", "curve")
        for rest in entry.get("rest", []):
            only(rest, "state", *WINDOW)
            if rest["state"] != "sleep":
                raise SystemExit("the rivals know sleep only")
        return Device(
            idle=self.number(watts, "idle"),
            off=self.number(watts, "off", 0),
            sleep=self.number(watts, "sleep", 0),
            busy=self.number(watts, "busy"),
            max=self.number(watts, "max"),
            curve=watts.get("curve", "linear"),
            groups={name: self.number(profile["groups"], name)
                    for name in profile.get("groups", {})},
            tasks={w: self.increment(profile, w) for w in workloads},
            sleeps=[window(rest) for rest in entry.get("rest", [])],
        )

    def increment(self, profile, workload):
        increments = profile.get("increments", {})
        if workload not in increments:
            compute = next(w for w in self.root["workload"] if w["id"] == workload)["compute"]
            return Increment(load=compute / self.number(profile, "capacity"))
        form = increments[workload]
        if not isinstance(form, dict):
            each = self.number(increments, workload)
            return Increment(first=each, each=each)
        only(form, "first", "each", "load", "group")
        each = self.number(form, "each", 0)
        return Increment(self.number(form, "first", each), each, self.number(form, "load", 0),
                         form.get("group"))


def read(path, pick=midpoint):
    return Reader(path, pick).study()
