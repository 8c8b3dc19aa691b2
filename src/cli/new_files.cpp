#include "cli/new_files.hpp"

#include <fmt/format.h>

#include "cli/new_figures.hpp"
#include "cli/new_templates.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/wrap.hpp"

namespace wattweek::cli {
namespace {

constexpr std::size_t kColumns = 80;

/// Text as lines of a comment.
std::string comment(std::string_view text) {
  std::string lines;
  for (const std::string& line : report::wrapped(text, kColumns - 2)) {
    lines += (lines.empty() ? "# " : "\n# ") + line;
  }
  return lines;
}

std::string idle_comment(const NewFigures& figures) {
  std::string text = "Switched on, its services up, nobody using them. ";
  if (figures.is_idle_given) return comment(text + "As given.");
  text += figures.is_busy_given ? "Assumed: half of the watts in use. " : "Assumed. ";
  return comment(text +
                 "Let the meter count the kWh of a quiet day: 0.324 kWh in 24 hours is 13.5 W.");
}

std::string stream_comment(const NewFigures& figures) {
  const std::string rule =
      "13.5 W idle and 29 W with five streams at once gives (29 - 13.5) / 5 = 3.1 W a stream.";
  if (!figures.is_busy_given) {
    return comment("Assumed. Read the meter while a known number of streams is running: " + rule);
  }
  return comment(fmt::format(
      "Assumed: the {} W that were given for the machine in use are those of {} streams at once, "
      "the most in study.toml: ({} - {}) / {} = {} W for each. If another number was running, "
      "divide by that: {}",
      plain_number(figures.busy_w), kStreams, plain_number(figures.busy_w),
      plain_number(figures.idle_w), kStreams, plain_number(figures.stream_w), rule));
}

std::string zone_comment(Source source) {
  const std::string how = " The IANA name of the home's time zone, such as Europe/Dublin.";
  switch (source) {
    case Source::given:
      return comment("Where the home is. As given.");
    case Source::machine:
      return comment("Assumed: the time zone of the machine that wrote this." + how);
    case Source::guess:
      break;
  }
  return comment("Assumed, since the machine that wrote this named no time zone." + how);
}

std::string study_text(const std::string& title, const NewFigures& figures,
                       const PlaceAndTime& where) {
  const std::string first_day = calendar::to_text(calendar::first_day(where.start));
  const std::string_view start_comment =
      where.is_start_given ? "The first day of the year that is reckoned. As given."
                           : "Assumed: the calendar year in which this was written. The first day "
                             "of the year that is reckoned, the first of a month.";
  using fmt::arg;
  return fmt::format(fmt::runtime(kStudy), arg("title", toml_string(title)),
                     arg("zone_comment", zone_comment(where.zone_source)),
                     arg("zone", toml_string(where.zone)),
                     arg("start_comment", comment(start_comment)), arg("start", first_day),
                     arg("streams", kStreams), arg("currency", figures.currency),
                     arg("purchase", toml_number(figures.purchase)));
}

std::string profile_text(const NewFigures& figures) {
  using fmt::arg;
  return fmt::format(
      fmt::runtime(kProfile), arg("caution", comment(report::measuring_caution())),
      arg("idle_comment", idle_comment(figures)), arg("idle", toml_number(figures.idle_w)),
      arg("stream_comment", stream_comment(figures)), arg("stream", toml_number(figures.stream_w)));
}

std::string tariff_text(const NewFigures& figures) {
  const std::string_view currency_comment =
      figures.is_currency_given ? "Three capitals. As given."
                                : "Assumed. The three capitals of the bill's currency.";
  const std::string_view price_comment =
      figures.is_price_given
          ? "For each kWh. As given."
          : "Assumed. The price of a kWh stands on the bill, beside the kWh of the period.";
  using fmt::arg;
  return fmt::format(fmt::runtime(kTariff), arg("currency_comment", comment(currency_comment)),
                     arg("currency", toml_string(figures.currency)),
                     arg("night_price", toml_number(figures.night_price_per_kwh)),
                     arg("price_comment", comment(price_comment)),
                     arg("price", toml_number(figures.price_per_kwh)));
}

std::string assumed_of_profile(const NewFigures& figures) {
  std::string text = "profile.toml: ";
  if (!figures.is_idle_given) {
    text += fmt::format("{} W with nobody using it; ", plain_number(figures.idle_w));
  }
  text += fmt::format("{} W more for each stream", plain_number(figures.stream_w));
  if (figures.is_busy_given) {
    text += fmt::format(", so that {} of them bring it to {} W", kStreams,
                        plain_number(figures.busy_w));
  }
  return text;
}

std::string assumed_of_tariff(const NewFigures& figures) {
  std::string text = "tariff.toml: ";
  if (!figures.is_price_given) {
    text += fmt::format("{} {} per kWh; ", plain_number(figures.price_per_kwh), figures.currency);
  } else if (!figures.is_currency_given) {
    text += fmt::format("the price is in {}; ", figures.currency);
  }
  return text + "no tax on top of the price, the same price at all hours, no standing charge";
}

std::string assumed_of_study(const NewFigures& figures, const PlaceAndTime& where) {
  std::string text = "study.toml: ";
  if (where.zone_source == Source::machine) {
    text += fmt::format("the time zone of this machine, {}; ", where.zone);
  } else if (where.zone_source == Source::guess) {
    text += fmt::format("the time zone {}, since this machine names none; ", where.zone);
  }
  if (!where.is_start_given) {
    text += fmt::format("the year {}; ", static_cast<int>(where.start.year()));
  }
  return text + fmt::format(
                    "3000 kWh a year for the rest of the home; when streams run; a palm-size box "
                    "for {} {}, its watts, and that your own machine would sell for nothing; 5 "
                    "years ahead at prices that stay as they are",
                    plain_number(figures.purchase), figures.currency);
}

}  // namespace

NewStudy new_study(const std::string& title, const Readings& readings, const PlaceAndTime& where) {
  const NewFigures figures = new_figures(readings);
  return {
      {{"study.toml", study_text(title, figures, where)},
       {"profile.toml", profile_text(figures)},
       {"tariff.toml", tariff_text(figures)}},
      {assumed_of_profile(figures), assumed_of_tariff(figures), assumed_of_study(figures, where)}};
}

}  // namespace wattweek::cli
