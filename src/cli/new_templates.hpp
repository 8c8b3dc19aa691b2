#pragma once
// The files of `new`, with names in braces where figures and the comments on them go. A line that
// begins with `#` and no blank is an example, which works as soon as the `#` is gone (a test takes
// all of them away).

#include <string_view>

namespace wattweek::cli {

inline constexpr std::string_view kStudy =
    R"(# A study: what is compared, for whom and when. In this folder run
#
#     wattweek compare study.toml       what each set-up costs, and which pays
#     wattweek check study.toml         all mistakes here and in the other two
#
# What is marked "Assumed" is a guess in place of a figure of your own: change
# those first, in profile.toml, in tariff.toml, and here. After that set up your
# own candidates at the end. A line that begins with # and no blank is an
# example: take its # away.

title = {title}

{zone_comment}
time_zone = {zone}

{start_comment}
start = {start}
months = 12

tariff = "tariff.toml"

# The candidate that the others are compared with.
baseline = "mine"

# What the rest of the home uses. It counts for the bill, and where prices step
# with consumption or a bill has a minimum.
[household]
# Assumed. The kWh of a whole year stand on the yearly bill.
kwh_per_year = 3000.0
# If those kWh were metered with the machine running, its own are taken off by:
#includes = "mine"

# How far to look ahead.
[finance]
# Assumed. How long you mean to keep what you buy now.
years = 5
# Assumed: money later counts as much as today. What savings earn in a year, as
# a fraction: 0.02 is 2 %.
discount_rate = 0.0
# Assumed: prices stay. By how much electricity gets dearer each year.
price_rise = 0.0

# CO2 is reckoned too if the kg that a kWh of the grid gives off are known.
#[carbon]
#kg_per_kwh = 0.25

# What the machine is used for. Assumed: note down a normal week of your own. A
# "share" is the fraction of the hours in which it is in use.
[[workload]]
id = "streaming"
name = "Streaming"
unit = "stream"

# On weekday evenings one stream, half of the time.
[[workload.use]]
days = "mon-thu"
hours = "19:00-22:00"
units = 1
share = 0.5

# At weekends up to {streams} at once, each by itself half of the time.
[[workload.use]]
days = "fri-sun"
hours = "18:00-23:00"
units = {streams}
share = 0.5
pattern = "independent"

# A second workload, 45 minutes every evening. Each profile that runs it needs
# an increment of that name: see the lines with "backup" in profile.toml and
# below.
#[[workload]]
#id = "backup"
#name = "Backup"
#unit = "job"
#[[workload.use]]
#hours = "22:00-24:00"
#minutes = 45

# The machine that you have, as profile.toml describes it.
[[candidate]]
id = "mine"
name = "My machine"
# Assumed. What it would sell for today.
purchase = 0.0
[[candidate.device]]
profile = "profile.toml"

# What could take its place: put the one that you think of here.
[[candidate]]
id = "palm-size-box"
name = "Palm-size box"
# Assumed. What it costs in the shop, in {currency}.
purchase = {purchase}
[[candidate.device]]
# Assumed: the watts of a machine that ships with wattweek, as ranges. The other
# ones are listed by `wattweek new --list`. Once you have metered yours, put a
# profile of its own here, like profile.toml.
profile = "shipped:palm-size-box"

# A third candidate: the machine that you have, shut down at night. Think first
# of what depends on it (telephone, alarms), and shut it down before you cut
# power.
#[[candidate]]
#id = "mine-off-at-night"
#name = "My machine, off at night"
#[[candidate.device]]
#profile = "profile.toml"
#[[candidate.device.rest]]
#hours = "00:00-06:00"
#state = "off"
)";

inline constexpr std::string_view kProfile =
    R"(# A profile: what one plugged-in device draws, in watts at the wall socket. A
# meter that flickers between 13.3 and 13.9 W is written [13.3, 13.9].
#
{caution}

name = "my machine"

[watts]
{idle_comment}
idle = {idle}
# Plugged in but shut down. Counts where a rest in the study says "off".
#off = 1.2

# What each workload of the study adds to the idle watts.
[increments]
{stream_comment}
streaming = {stream}
#backup = 4.0
)";

inline constexpr std::string_view kTariff =
    R"(# A tariff: your electricity contract as it is written. Amounts are in whole
# units of the currency: 0.30, not 30 cents.

name = "my contract"

{currency_comment}
currency = {currency}

# Assumed: the prices below have all taxes in them. Where the bill adds a tax at
# its end, write the prices without it, and the tax as a fraction: 0.09 is 9 %.
tax = 0.0

# Assumed: none. What is due each day whatever you use. It is on the bill, and
# the same for all candidates. A charge by the month is standing_per_month.
standing_per_day = 0.0

# A cheaper price at some hours stands before the price for all others, since
# the first band that holds sets the price.
#[[band]]
#name = "night"
#price = {night_price}
#hours = "23:00-07:00"

[[band]]
name = "all hours"
{price_comment}
price = {price}
)";

}  // namespace wattweek::cli
