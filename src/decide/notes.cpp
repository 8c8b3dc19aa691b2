#include "wattweek/decide/notes.hpp"

#include "wattweek/decide/profile_alone.hpp"
#include "wattweek/diag/number_text.hpp"
#include "wattweek/units/currency.hpp"
#include "words.hpp"

namespace wattweek::decide {

namespace {

// Less idle than this is rarely a machine and often a figure in kilowatts.
constexpr double kLeastLikelyIdleW = 0.25;

void note_price(const model::Tariff& tariff, const model::PriceRange& price,
                const diag::Place& place, std::vector<Note>& notes) {
  const double per_kwh = units::in_currency_per_kilowatt_hour(price.high);
  if (!units::price_looks_like_cents(per_kwh, tariff.currency)) return;
  notes.push_back({"price-like-cents", place,
                   "a price of " + diag::rounded(per_kwh, 6) + " " + tariff.currency +
                       " per kWh looks like one in hundredths; write " +
                       diag::rounded(per_kwh / 100, 6) + " if it is"});
}

bool looks_like_kilowatts(double watts) { return watts > 0 && watts < kLeastLikelyIdleW; }

std::vector<Note> notes_of_week(const model::Profile& profile) {
  const double mean_w = units::in_watts(overview_of(*profile.week).mean);
  if (!looks_like_kilowatts(mean_w)) return {};
  return {{"watts-like-kilowatts", profile.place,
           "mean watts of " + diag::rounded(mean_w, 6) + " over the week of " +
               quoted(profile.name) + " look like kilowatts; multiply them by 1000 if they are"}};
}

}  // namespace

std::vector<Note> notes_of_tariff(const model::Tariff& tariff) {
  std::vector<Note> notes;
  for (const model::Band& band : tariff.bands) {
    note_price(tariff, band.price, band.price_place, notes);
  }
  for (const model::Block& block : tariff.blocks) {
    note_price(tariff, block.price, block.price_place, notes);
  }
  return notes;
}

std::vector<Note> notes_of_profile(const model::Profile& profile) {
  if (profile.week) return notes_of_week(profile);
  const double idle_w = units::in_watts(profile.idle.high);
  if (!looks_like_kilowatts(idle_w)) return {};
  return {{"watts-like-kilowatts", profile.place,
           "idle watts of " + diag::rounded(idle_w, 6) + " of " + quoted(profile.name) +
               " look like kilowatts; write " + diag::rounded(idle_w * 1000, 6) + " if they are"}};
}

std::string where_text(const Note& note) {
  if (const auto* id = std::get_if<std::string>(&note.where)) return *id;
  return diag::to_text(std::get<diag::Place>(note.where));
}

}  // namespace wattweek::decide
