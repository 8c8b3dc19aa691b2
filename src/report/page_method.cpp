// How it was reckoned, and under which contract.

#include <fmt/format.h>

#include <algorithm>

#include "page_figures.hpp"
#include "page_sections.hpp"
#include "sections.hpp"
#include "sentences.hpp"
#include "spoken.hpp"
#include "tariff_terms.hpp"
#include "wattweek/decide/ranking.hpp"
#include "wattweek/report/cautions.hpp"
#include "wattweek/report/words.hpp"

namespace wattweek::report {
namespace {

std::string percent_range(const units::Range<double>& range) {
  const std::string low = rounded(100 * range.low, 2);
  const std::string high = rounded(100 * range.high, 2);
  return low == high ? low + " %" : fmt::format("{} to {} %", low, high);
}

std::string money_assumption(const Shown& s) {
  const model::Finance finance = s.study.finance.value_or(model::Finance{});
  return fmt::format(
      "Prices of electricity rise by {} a year. What is paid later counts for less, by {} for each "
      "year: the rate of discount.",
      percent_range(finance.price_rise), percent_range(finance.discount_rate));
}

std::string household_assumption(const Shown& s) {
  double kwh = 0;
  for (const units::Energy month : s.all.without.household) kwh += units::in_kilowatt_hours(month);
  std::string words = fmt::format("The home itself uses {} kWh {} without any of these machines",
                                  fixed(kwh, 0), over_the_study(s));
  if (s.study.household.includes) {
    words += fmt::format(": what its meter showed, less what {} drew",
                         s.study.candidates[*s.study.household.includes].name);
  }
  return words + ".";
}

std::vector<std::string> assumptions(const Shown& s) {
  std::vector<std::string> all = {
      fmt::format("The contract {} holds all the time, at today's prices in the first year.",
                  s.study.tariff.name)};
  if (s.all.candidates.front().lifetime) {
    all.push_back(money_assumption(s));
    all.emplace_back("Every year is used like the first.");
  } else if (!s.is_year()) {
    all.emplace_back("Figures a year are those of the study, scaled up by its months.");
  }
  all.push_back(household_assumption(s));
  all.emplace_back(
      "Different uses go on independently of each other: that one is on says nothing about "
      "another.");
  if (s.all.uncertainty) {
    all.emplace_back(
        "Where a figure is a range, each value within is as likely as any other; results without "
        "brackets take its middle.");
  }
  return all;
}

/// Watts of a profile that may be given or not, `-` where they are not.
std::string maybe_watts(const std::optional<model::PowerRange>& range) {
  return range ? watts_text(*range) : "-";
}

std::vector<const model::Profile*> profiles_of(const model::Study& study) {
  std::vector<const model::Profile*> all;
  for (const model::Candidate& candidate : study.candidates) {
    for (const model::Device& device : candidate.devices) {
      if (std::find(all.begin(), all.end(), device.profile.get()) == all.end()) {
        all.push_back(device.profile.get());
      }
    }
  }
  return all;
}

NamedTable watts_table(const std::vector<const model::Profile*>& profiles) {
  Table table{{{"", Align::left}, {"off"}, {"asleep"}, {"idle"}, {"full load"}, {"at most"}}, {}};
  for (const model::Profile* profile : profiles) {
    std::optional<model::PowerRange> busy = profile->busy;
    if (!profile->at_load.empty()) busy = profile->at_load.back();
    table.rows.push_back({profile->name, watts_text(profile->off), maybe_watts(profile->sleep),
                          profile->week ? "by the hour" : watts_text(profile->idle),
                          maybe_watts(busy), maybe_watts(profile->max)});
  }
  return {"watts", "Watts at the wall socket, as the files have them", std::move(table)};
}

/// The comment that a file begins with, as one text: there its author says where the watts come
/// from. A line for editors (`#:schema`) is none.
std::string first_comment(const std::string& text) {
  constexpr std::size_t kLongest = 600;
  std::string words;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    std::string_view line(text.data() + begin, end - begin);
    begin = end + 1;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' ')) line.remove_suffix(1);
    if (line.substr(0, 2) == "#:") continue;
    if (line.empty() && words.empty()) continue;
    if (line.empty() || line.front() != '#') break;
    line.remove_prefix(std::min(line.find_first_not_of("# "), line.size()));
    words += (words.empty() ? "" : " ") + std::string(line);
  }
  if (words.size() <= kLongest) return words;
  return words.substr(0, words.rfind(' ', kLongest)) + " ...";
}

List sources_of(const std::vector<const model::Profile*>& profiles,
                const std::vector<InputFile>& inputs) {
  List list;
  for (const model::Profile* profile : profiles) {
    // What stands in the study itself has no comment of its own.
    const auto file = std::find_if(inputs.begin(), inputs.end(), [&](const InputFile& input) {
      return &input != &inputs.front() && profile->place.file && input.name == *profile->place.file;
    });
    const std::string words = file == inputs.end() ? "" : first_comment(file->text);
    list.items.push_back(fmt::format("{}: {}", profile->name,
                                     words.empty() ? "its file says nothing of a source." : words));
  }
  return list;
}

/// Of documents that do not come with the page.
std::string without_reference(std::string text) {
  const std::size_t at = text.find(" (docs/safety.md)");
  if (at != std::string::npos) text.erase(at, std::string_view(" (docs/safety.md)").size());
  return text;
}

List bear_in_mind(const Shown& s) {
  List list;
  for (const std::string& limit : limits(s.study)) list.items.push_back(without_reference(limit));
  list.items.push_back(without_reference(std::string(measuring_caution())));
  return list;
}

List prices_of(const model::Tariff& tariff) {
  List list;
  for (const model::Band& band : tariff.bands) {
    list.items.push_back(fmt::format(
        "{}: {} {} a kWh.", band.name,
        price_text(
            units::in_currency_per_kilowatt_hour(band.price.central()) * (1 + tariff.tax.central()),
            tariff.currency),
        tariff.currency));
  }
  for (const std::string& term : terms(tariff)) list.items.push_back(term);
  return list;
}

/// The candidate whose bill is shown first: the best, else the first.
std::size_t first_shown(const Shown& s) {
  const auto ranked = decide::ranking(s.study, s.all);
  return ranked ? ranked->front().candidate : 0;
}

}  // namespace

PageSection bill_section(const Shown& s, const ReportShown& shown) {
  const std::string month = month_name(s.all.months[shown.month].month);
  PageSection section{"bill", fmt::format("What does the bill of {} say?", month), {}};
  section.blocks.emplace_back(Paragraph{
      fmt::format("The contract is {}, in {}. Prices of a kWh are with tax:", s.study.tariff.name,
                  s.currency())});
  section.blocks.emplace_back(prices_of(s.study.tariff));
  section.blocks.emplace_back(Paragraph{
      "The household's bill, line by line, without and with the machine. Lines are before tax. "
      "Nothing is rounded before it is shown; a bill that rounds each line differs by cents."});
  const Document bills = month_bills(s.study, s.all, shown.month);
  const std::size_t first = first_shown(s);
  std::vector<PageBlock> others;
  for (std::size_t c = 0; c < s.study.candidates.size(); ++c) {
    const Section& bill = bills.sections[1 + c];
    std::vector<PageBlock>& to = c == first ? section.blocks : others;
    to.emplace_back(NamedTable{"bill-" + s.study.candidates[c].id, bill.heading,
                               std::get<Table>(bill.blocks[0])});
    to.emplace_back(std::get<Paragraph>(bill.blocks[1]));
  }
  if (!others.empty()) {
    section.blocks.emplace_back(Folded{"The same for the others", std::move(others)});
  }
  return section;
}

PageSection method_section(const Shown& s, const ReportShown& shown) {
  PageSection section{"method", "How was it reckoned?", {}};
  section.blocks.emplace_back(Paragraph{
      "All time of the study is sorted by month, by price band and by what may be in use. For each "
      "such kind of time the watts of every device are reckoned over all that can be in use at "
      "once, "
      "not for an average, and multiplied by its hours. Then the household's electricity bill is "
      "reckoned twice, without the machine and with it: the difference is what it costs."});
  section.blocks.emplace_back(Subheading{"What was assumed"});
  section.blocks.emplace_back(List{assumptions(s)});
  section.blocks.emplace_back(Subheading{"Where the watts come from"});
  const std::vector<const model::Profile*> profiles = profiles_of(s.study);
  section.blocks.emplace_back(watts_table(profiles));
  section.blocks.emplace_back(sources_of(profiles, shown.inputs));
  section.blocks.emplace_back(Subheading{"What to bear in mind"});
  section.blocks.emplace_back(bear_in_mind(s));
  return section;
}

}  // namespace wattweek::report
