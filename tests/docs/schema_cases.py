"""Files that a schema must refuse, and texts of the little languages, right and wrong.

Each wrong file is a right one with one small change. The program must refuse it as well: a schema
is never stricter than the reader.
"""

# Right files; together they have every table and key. The last word is the kind of file.
RIGHT = {
    "study": """\
title = "Evenings"
time_zone = "Europe/Dublin"
start = 2027-01-01
months = 12
holidays = [2027-01-01, 2027-12-25]
holidays_as = "sun"
baseline = "tower"

[tariff]
name = "Day and night"
currency = "EUR"
tax = 0.09
standing_per_day = 0.58
standing_per_month = [1, 2]
minimum_per_month = 12
blocks_per = "day"
[[tariff.band]]
name = "night"
price = 0.17
when = [{ hours = "23:00-08:00", months = "jan" }, { days = "sun", months = "feb" }]
[[tariff.band]]
name = "day"
price = [0.30, 0.32]
[[tariff.block]]
up_to = 8
price = 0.01
[[tariff.block]]
price = 0.02

[household]
kwh_per_year = [3900, 4300]
includes = "tower"

[carbon]
kg_per_kwh = 0.25

[finance]
years = 5
discount_rate = 0.02
price_rise = [0.0, 0.03]

[[meter]]
id = "hall"
scale = [0.98, 1.02]

[[workload]]
id = "films"
name = "Film streaming"
unit = "stream"
compute = 1.5
[[workload.use]]
days = "fri-sun"
hours = "19:00-23:00"
units = 3
share = [0.3, 0.5]
pattern = "independent"
[[workload.use]]
hours = "01:00-04:00"
minutes = 50

[[away]]
dates = "2027-07-10..2027-07-24"
workloads = ["films"]

[[candidate]]
id = "tower"
purchase = 40
resale = [5, 10]
[[candidate.later]]
year = 3
cost = 70
name = "new disk"
[[candidate.device]]
name = "tower"
count = 2
runs = ["films"]
capacity = 6
meter = "hall"
watts = { off = 1.1, sleep = 3, idle = [52, 56], busy = 140, max = 150, curve = "concave" }
groups = { disks = 7.5 }
increments = { films = { first = 6.0, each = 4.2, group = "disks" }, photos = { load = 0.1 } }
[[candidate.device.rest]]
days = "mon-fri"
state = "sleep"
[[candidate.device]]
name = "disks"
runs = []
assists = ["films"]
watts = { idle = 12 }
increments = { films = 1 }

[[candidate]]
id = "box"
skips = ["films"]
[[candidate.device]]
profile = "shipped:palm-size-box"
""",
    "short study": """\
time_zone = "Etc/UTC"
start = 2027-01-01
tariff = "shipped:flat"
household = { kwh_per_month = [42, 38, 36, 31, 28, 25, 25, 26, 28, 33, 38, 43] }
workload = [{ id = "films", use = [{ units = 0 }] }]
candidate = [{ id = "box", skips = ["films"], device = [{ profile = "shipped:palm-size-box" }] }]
""",
    "profile": """\
name = "palm-size box"
capacity = 6
meter = "hall"

[watts]
off = 1.1
at_load = [48, 61, 70]

[groups]
disks = 7.5

[increments]
radio = 1.2
films = [3.0, 3.2]
photos = { first = 4.0, each = 2.0 }
games = { table = [6.0, 9.5], group = "disks" }
search = { load = 0.06 }
scrub = { group = "disks" }
""",
    "measured profile": "watts = { off = 1, sleep = 2, week = [" + ", ".join(["9"] * 168) + "] }\n",
    "tariff": """\
currency = "USD"
holidays = []

[[band]]
name = "winter weekday evenings"
price = 0.41
days = "mon-fri"
hours = "17:00-21:00"
months = "nov-feb"
dates = "2027-01-01..2027-12-31"

[[band]]
name = "all other hours"
price = -0.02
""",
}

# The file, what is wrong, what is changed, and into what.
WRONG = [
    ("study", "an unknown key at the top", 'title = "Evenings"', 'titel = "Evenings"'),
    ("study", "an unknown key in a repeated table", "count = 2", "copies = 2"),
    ("study", "an unknown key in a table in braces", "off = 1.1", "standby = 1.1"),
    ("study", "no time zone", 'time_zone = "Europe/Dublin"\n', ""),
    ("study", "a time zone of blanks", '"Europe/Dublin"', '"  "'),
    ("study", "a start within a month", "start = 2027-01-01", "start = 2027-01-15"),
    ("study", "a start with a time", "start = 2027-01-01", "start = 2027-01-01T00:00:00"),
    ("study", "no month", "months = 12", "months = 0"),
    ("study", "too many months", "months = 12", "months = 121"),
    ("study", "a filter in place of a length", "months = 12", 'months = "jan-dec"'),
    ("study", "one holiday without brackets", "[2027-01-01, 2027-12-25]", "2027-01-01"),
    ("study", "holidays as a day that is none", 'holidays_as = "sun"', 'holidays_as = "holiday"'),
    ("study", "a table in double brackets", "[household]", "[[household]]"),
    ("study", "a repeated table in single brackets", "[[meter]]", "[meter]"),
    ("short study", "no tariff", 'tariff = "shipped:flat"\n', ""),
    ("short study", "a tariff that is a number", '"shipped:flat"', "0.30"),
    ("short study", "a tariff without a name", '"shipped:flat"', '""'),
    ("short study", "a tariff without a band", '"shipped:flat"', '{ currency = "EUR" }'),
    ("study", "an unknown key of its tariff", "tax = 0.09", "vat = 0.09"),
    ("study", "a year and its months", "includes =", f"kwh_per_month = {[300] * 12}\nincludes ="),
    ("short study", "eleven months", "[42, 38,", "[42,"),
    ("study", "carbon without a figure", "kg_per_kwh = 0.25", ""),
    ("study", "years beyond the horizon", "years = 5", "years = 31"),
    ("study", "a rate of -1", "discount_rate = 0.02", "discount_rate = -1"),
    ("study", "a scale of nothing", "scale = [0.98, 1.02]", "scale = 0"),
    ("study", "an id with capitals", 'id = "films"', 'id = "Films"'),
    ("study", "an id with a blank", 'baseline = "tower"', 'baseline = "the tower"'),
    ("study", "a text of two lines", '"Film streaming"', r'"Film\nstreaming"'),
    ("study", "a share in percent", "share = [0.3, 0.5]", "share = 30"),
    ("study", "a share above 1", "share = [0.3, 0.5]", "share = [0.3, 1.5]"),
    ("study", "minutes and a share", "minutes = 50", "minutes = 50\nshare = 0.5"),
    ("study", "minutes in two spans", '"01:00-04:00"', '"01:00-02:00,03:00-04:00"'),
    ("study", "more minutes than a day has", "minutes = 50", "minutes = 1441"),
    ("study", "half a unit by itself", "units = 3", "units = 2.5"),
    ("study", "units as a range", "units = 3", "units = [2, 3]"),
    ("study", "an unknown pattern", '"independent"', '"random"'),
    ("study", "away without dates", 'dates = "2027-07-10..2027-07-24"\n', ""),
    ("study", "away from nothing", 'workloads = ["films"]', "workloads = []"),
    ("short study", "a workload without a use", ", use = [{ units = 0 }]", ""),
    ("short study", "a use that never ends", "units = 0", "units = inf"),
    ("study", "a candidate without an id", 'id = "box"\n', ""),
    ("short study", "no device", '[{ profile = "shipped:palm-size-box" }]', "[]"),
    ("study", "one id without brackets", 'skips = ["films"]', 'skips = "films"'),
    ("study", "an id named twice", 'runs = ["films"]', 'runs = ["films", "films"]'),
    ("study", "a later cost at the start", "year = 3", "year = 0"),
    ("study", "a later cost without a cost", "cost = 70\n", ""),
    ("study", "half a device", "count = 2", "count = 1.5"),
    ("study", "a profile and watts", 'profile = "', 'watts = { idle = 9 }\nprofile = "'),
    ("study", "neither a profile nor watts", 'profile = "shipped:palm-size-box"', ""),
    ("study", "a profile that is a table", '"shipped:palm-size-box"', "{ idle = 9 }"),
    ("study", "a rest that hibernates", 'state = "sleep"', 'state = "hibernate"'),
    ("study", "a rest without a state", 'state = "sleep"\n', ""),
    ("study", "blocks a week", 'blocks_per = "day"', 'blocks_per = "week"'),
    ("study", "watts without idle", "idle = [52, 56], ", ""),
    ("study", "an unknown curve", '"concave"', '"convex"'),
    ("study", "a load with watts", "{ load = 0.1 }", "{ load = 0.1, each = 2 }"),
    ("profile", "no watts", "[watts]", "[groups2]"),
    ("profile", "negative watts", "off = 1.1", "off = -1.1"),
    ("profile", "watts in quotes", "off = 1.1", 'off = "1.1 W"'),
    ("profile", "watts beyond all measure", "off = 1.1", "off = 1e13"),
    ("profile", "a range of three", "off = 1.1", "off = [1.1, 1.2, 1.3]"),
    ("profile", "a range of one", "off = 1.1", "off = [1.1]"),
    ("profile", "a truth value", "off = 1.1", "off = true"),
    ("profile", "a capacity of nothing", "capacity = 6", "capacity = 0"),
    ("profile", "watts at one load", "at_load = [48, 61, 70]", "at_load = [48]"),
    ("profile", "idle and watts at load", "off = 1.1", "idle = 48"),
    ("measured profile", "a week that lacks an hour", "week = [9, ", "week = ["),
    ("measured profile", "a week of an hour more", "week = [", "week = [9, "),
    ("measured profile", "a week with a range", "week = [9, ", "week = [[9, 10], "),
    ("measured profile", "negative watts in a week", "week = [9, ", "week = [-9, "),
    ("measured profile", "a week and idle", "off = 1", "idle = 1"),
    ("measured profile", "a week and busy", "off = 1", "busy = 1"),
    ("measured profile", "a week and a cap", "off = 1", "max = 1"),
    ("measured profile", "a week and a curve", "off = 1", 'curve = "linear"'),
    ("measured profile", "a week and watts at load", "off = 1", "at_load = [1, 2]"),
    ("profile", "a group that is a text", "disks = 7.5", 'disks = "7.5"'),
    ("profile", "a group without a name", "disks = 7.5", 'disks = 7.5\n"" = 3'),
    ("profile", "an increment of an id with capitals", "radio = 1.2", "Radio = 1.2"),
    ("profile", "negative increments", "radio = 1.2", "radio = -1.2"),
    ("profile", "an increment of nothing", "radio = 1.2", "radio = {}"),
    ("profile", "an unknown key of an increment", "each = 2.0", "next = 2.0"),
    ("profile", "an increment of two forms", "{ table =", "{ first = 5, table ="),
    ("profile", "an empty table", "table = [6.0, 9.5]", "table = []"),
    ("profile", "a load with a group", "load = 0.06", 'load = 0.06, group = "disks"'),
    ("tariff", "no currency", 'currency = "USD"\n', ""),
    ("tariff", "a currency in lower case", '"USD"', '"usd"'),
    ("tariff", "a currency by its sign", '"USD"', '"$"'),
    ("tariff", "a holiday that is a number", "holidays = []", "holidays = [2027]"),
    ("tariff", "a negative tax", "holidays = []", "tax = -0.1"),
    ("tariff", "a band without a price", "price = 0.41\n", ""),
    ("tariff", "a band without a name", 'name = "all other hours"\n', ""),
    ("tariff", "a price in quotes", "price = 0.41", 'price = "0.41"'),
    ("tariff", "a window and when", 'days = "mon-fri"', 'when = [{ days = "mon-fri" }]'),
    ("tariff", "no window in when", "price = -0.02", "price = -0.02\nwhen = []"),
    ("tariff", "neither a band nor a block", "[[band]]", "[[bands]]"),
    ("tariff", "a limit of nothing", "price = -0.02", "price = -0.02\n[[block]]\nup_to = 0"),
    ("tariff", "a block without a price", "price = -0.02", "price = -0.02\n[[block]]\nmonths='jan'"),
    ("tariff", "hours beyond the day", '"17:00-21:00"', '"25:00-26:00"'),
    ("tariff", "hours as an array", '"17:00-21:00"', '["17:00-21:00"]'),
    ("tariff", "a day that is none", '"mon-fri"', '"mon-fry"'),
]

# Texts of a key of [[band]], each right or wrong: the schema must judge as the program does.
TEXTS = {
    "days": ["all", " ALL ", "mon", "Mon", " mon - fri , SUN ", "sat-mon", "mon-mon", "mon,mon",
             "", " ", ",", "mon,", ",mon", "mon,,tue", "mon-", "-mon", "mon-tue-wed", "all,mon",
             "mon,all", "all-mon", "monday", "mo", "mon tue", "mon;tue", "mon\u2013fri", "jan"],
    "months": ["all", "jan", "nov-feb", "Apr , oct - DEC", "jan-jan", "", "jan,", "jan-feb-mar",
               "january", "1", "all,jan", "mon", "jan..feb"],
    "hours": ["00:00-24:00", "22:00-06:00", "22:00-00:00", "06:00-09:00,17:00-24:00",
              " 06:00 - 09:00 , 17:00 - 24:00 ", "23:59-00:00", "00:00-00:01", "20:00-04:00",
              "", ",", "6:00-9:00", "06:00", "06:00-", "06:00-09:00,", "06:00-06:00",
              "00:00-00:00", "24:00-06:00", "24:00-24:00", "06:00-24:01", "06:60-07:00",
              "25:00-26:00", "06:00-09:00-12:00", "06.00-09.00", "06:00-09:00 17:00-18:00",
              "06:00\u201309:00", "06:00-09:00,17:00-17:00", "all", "0a:00-09:00"],
    "dates": ["2027-07-10..2027-07-24", " 2027-07-10 .. 2027-07-24 ", "2027-07-10..2027-07-10",
              "2024-02-29..2024-02-29", "", "2027-07-10", "2027-07-10..", "2027-07-10...2027-07-24",
              "2027-07-10-2027-07-24", "2027-13-10..2027-13-24", "2027-00-10..2027-00-24",
              "2027-07-32..2027-08-24", "2027-07-00..2027-07-24", "27-07-10..27-07-24",
              "10.07.2027..24.07.2027"],
}

# What is put in place of every value in turn: whatever the program takes a schema must take.
IN_PLACE = ["0", "1", "12", "-0.5", "0.5", "2.0", "1000000", "[1, 2]", "[0.1, 0.2, 0.3]", "[]",
            '"films"', '"tower"', '["films"]', '"hall"', '"Mon"', '"SAT-mon, wed"', '"NOV - feb"',
            '" sun "', '"06:00 - 07:00 , 22:00-24:00"', '"2027-02-01 .. 2027-03-01"', '"off"',
            '"Gr\u00fcn & <x>"', "2027-01-01", "2028-03-01", "[2027-01-01]", "{}", "{ idle = 9 }",
            "{ films = 3, photos = [1, 2] }", '{ "a b" = 3 }', '[{ hours = "00:00-24:00" }]',
            "{ table = [1, 2] }", '"shipped:flat"', '"linear"', '"together"', '"month"', "true"]
