// Whether the values are watts, energies of intervals, or a running counter; and in which unit.

#include <algorithm>
#include <cmath>

#include "headings.hpp"
#include "infer.hpp"

namespace wattweek::logs {
namespace {

constexpr std::size_t kFewRows = 6;
// So many values in a row that never fall are no watts.
constexpr std::size_t kManyRises = 20;
// Logs of samples are denser than this, logs of a supplier's meter are not.
constexpr double kSupplierStep_s = 240;
// A household cannot draw more for long, so the unit must be the smaller one.
constexpr double kHighestMean_w = 20'000;
// Of a home that is often less, and more than a thousandth of it is often used by a device: where
// kWh would make so much, the unit may be either.
constexpr double kHighMean_w = 3'000;

// The values in time order, and the steps between them.
struct Behaviour {
  std::vector<double> values{};
  double typical_step_s = 0;
  double span_s = 0;
  bool regular = false;
  std::size_t falls = 0;
  std::size_t restarts = 0;  ///< Of `falls`: to less than a tenth.
  std::size_t rises = 0;
  bool has_fractions = false;
  std::optional<Unit> unit{};  ///< Written behind the numbers.

  // Now and then a counter begins anew; some do so every day.
  bool runs_on() const {
    return rises > 0 && (falls * 50 <= rises || (restarts == falls && falls * 5 <= rises));
  }
  bool is_constant() const { return rises == 0 && falls == 0; }
};

struct Row {
  Microseconds at = 0;
  Number number{};
};

std::vector<Row> rows_of(const Inference& inference) {
  const Sample& sample = inference.sample;
  const Layout& layout = inference.layout;
  std::vector<Row> rows;
  rows.reserve(sample.rows());
  KnownDate known;
  for (std::size_t row = 0; row < sample.rows(); ++row) {
    const auto clock = layout.time.clock_column ? sample.field(row, *layout.time.clock_column)
                                                : std::string_view();
    const auto at = time_of(layout.time, sample.field(row, layout.time.column), clock, known);
    const auto number = number_of(sample.field(row, layout.value_column), layout.style);
    if (at && number) rows.push_back({at->us, *number});
  }
  const auto is_earlier = [](const Row& a, const Row& b) { return a.at < b.at; };
  if (!std::is_sorted(rows.begin(), rows.end(), is_earlier)) {
    std::stable_sort(rows.begin(), rows.end(), is_earlier);
  }
  return rows;
}

void look_at_steps(std::vector<double> steps, Behaviour& behaviour) {
  if (steps.empty()) return;
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  behaviour.typical_step_s = *middle;
  const auto alike = std::count_if(steps.begin(), steps.end(), [&](double step) {
    return std::abs(step - *middle) <= std::max(1.0, 0.02 * *middle);
  });
  behaviour.regular = static_cast<std::size_t>(alike) * 2 > steps.size();
}

Behaviour behaviour_of(const Inference& inference) {
  const std::vector<Row> rows = rows_of(inference);
  Behaviour behaviour;
  std::vector<double> steps;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double value = rows[i].number.value;
    behaviour.values.push_back(value);
    behaviour.has_fractions |= value != std::floor(value);
    if (rows[i].number.unit) behaviour.unit = rows[i].number.unit;
    if (i == 0 || rows[i].at == rows[i - 1].at) continue;
    steps.push_back(static_cast<double>(rows[i].at - rows[i - 1].at) / 1e6);
    behaviour.falls += value < rows[i - 1].number.value;
    behaviour.restarts += value < 0.1 * rows[i - 1].number.value;
    behaviour.rises += value > rows[i - 1].number.value;
  }
  if (!rows.empty()) behaviour.span_s = static_cast<double>(rows.back().at - rows.front().at) / 1e6;
  look_at_steps(std::move(steps), behaviour);
  return behaviour;
}

Heading heading_of_value(const Inference& inference) {
  const Layout& layout = inference.layout;
  const auto& names = inference.sample.names;
  Heading heading =
      layout.value_column < names.size() ? heading_of(names[layout.value_column]) : Heading{};
  // What the rows that are kept are called says as much.
  if (heading.quantity == Quantity::unsaid && layout.where) {
    const Heading of_rows = heading_of(layout.where->second);
    heading.quantity = of_rows.quantity;
    heading.unit = of_rows.unit;
  }
  return heading;
}

// Under a heading that says so: W is a status, too.
bool may_hold_units(const Sample& sample, std::size_t column) {
  if (column >= sample.names.size()) return sample.names.empty();
  const auto words = words_of(sample.names[column]);
  return std::any_of(words.begin(), words.end(), [](const std::string& word) {
    return word == "unit" || word == "units" || word == "einheit" || word == "uom";
  });
}

// A column that holds nothing but the name of a unit.
std::optional<Unit> unit_beside(const Sample& sample) {
  for (std::size_t c = 0; c < sample.columns(); ++c) {
    if (!may_hold_units(sample, c)) continue;
    const auto fields = different_fields(sample, c, 2);
    if (fields.size() == 1) {
      const auto words = words_of(fields.front());
      const Heading named = heading_of(fields.front());
      if (words.size() == 1 && named.unit) return named.unit;
    }
  }
  return std::nullopt;
}

Refusal ask(const Inference& inference, const std::string& what) {
  return {column_name(inference.sample, inference.layout.value_column) + what, 0,
          inference.layout.value_column};
}

std::variant<Kind, Refusal> energy_or_counter(const Inference& inference, Quantity said,
                                              const Behaviour& behaviour) {
  const bool enough = behaviour.values.size() >= kFewRows;
  if (behaviour.runs_on() && (enough || said == Quantity::counter)) return Kind::counter;
  if (behaviour.falls > 0 && !behaviour.runs_on()) return Kind::energy;
  if (said == Quantity::counter) return Kind::counter;
  return ask(inference,
             " may hold the energy of each interval, or a counter that runs on; say which by "
             "--kind energy or --kind counter");
}

std::variant<Kind, Refusal> unsaid_kind(const Inference& inference, const Behaviour& behaviour) {
  if (behaviour.runs_on() && behaviour.rises >= kManyRises) return Kind::counter;
  if (behaviour.runs_on() && behaviour.falls == 0 && behaviour.rises > 1) {
    return ask(inference,
               " may hold watts, or a counter that runs on; say which by --kind power "
               "or --kind counter");
  }
  if (!behaviour.regular || behaviour.typical_step_s < kSupplierStep_s) return Kind::power;
  return ask(inference,
             " may hold watts, or the energy of each interval; say which by --kind power or "
             "--kind energy");
}

std::variant<Kind, Refusal> kind_of(const Inference& inference, const Heading& heading,
                                    std::optional<Unit> unit, const Behaviour& behaviour) {
  const LogOptions& options = inference.options;
  if (options.kind) return *options.kind;
  if (options.power_column) return Kind::power;
  if (unit && is_power(*unit)) return Kind::power;
  if (unit || options.energy_column) {
    return energy_or_counter(inference, heading.quantity, behaviour);
  }
  switch (heading.quantity) {
    case Quantity::power:
      return Kind::power;
    case Quantity::energy:
    case Quantity::counter:
      return energy_or_counter(inference, heading.quantity, behaviour);
    case Quantity::unsaid:
    case Quantity::other:
      break;
  }
  return unsaid_kind(inference, behaviour);
}

// Mean power if the values were kWh.
double mean_w_of_kwh(Kind kind, const Behaviour& behaviour) {
  if (behaviour.values.size() < 2 || behaviour.span_s <= 0) return 0;
  double kwh = 0;
  if (kind == Kind::counter) {
    const auto [low, high] = std::minmax_element(behaviour.values.begin(), behaviour.values.end());
    kwh = *high - *low;
  } else {
    for (const double value : behaviour.values) kwh += value;
  }
  return kwh * 3.6e6 / behaviour.span_s;
}

// Where no unit is written: watts are W; a kind that was asked for is in kWh; else what is
// possible for a home.
std::variant<Unit, Refusal> unsaid_unit(const Inference& inference, Kind kind,
                                        const Behaviour& behaviour) {
  if (kind == Kind::power) return Unit::w;
  const double mean_w = mean_w_of_kwh(kind, behaviour);
  if (mean_w > kHighestMean_w) return Unit::wh;
  const bool is_likely = behaviour.has_fractions || inference.options.kind;
  if (is_likely && mean_w <= kHighMean_w) return Unit::kwh;
  return ask(inference, " may be in kWh or in Wh; say which by --unit kWh or --unit Wh");
}

std::string said(Kind kind, Unit unit, bool was_said) {
  const std::string in = " in " + std::string(name_of(unit));
  const std::string how = was_said ? "" : ", since no unit is given";
  switch (kind) {
    case Kind::power:
      return "kind: power" + in + how + " (--kind, --unit)";
    case Kind::energy:
      return "kind: energy of intervals" + in + how + " (--kind, --unit)";
    case Kind::counter:
      return "kind: a counter that runs on," + in + how + " (--kind, --unit)";
  }
  return {};
}

Step check_unit(const Inference& inference, Kind kind, Unit unit) {
  if (is_power(unit) == (kind == Kind::power)) return std::nullopt;
  return ask(inference, std::string(" cannot be ") +
                            (kind == Kind::power ? "power in " : "energy in ") +
                            std::string(name_of(unit)) + "; see --kind and --unit");
}

}  // namespace

Step infer_kind(Inference& inference) {
  const Behaviour behaviour = behaviour_of(inference);
  const Heading heading = heading_of_value(inference);
  auto unit = inference.options.unit;
  if (!unit) unit = heading.unit;
  if (!unit) unit = behaviour.unit;
  if (!unit) unit = unit_beside(inference.sample);
  const auto kind = kind_of(inference, heading, unit, behaviour);
  if (const auto* refusal = std::get_if<Refusal>(&kind)) return *refusal;
  Layout& layout = inference.layout;
  layout.meaning.kind = std::get<Kind>(kind);
  const bool was_said = unit.has_value();
  if (!unit) {
    const auto likely = unsaid_unit(inference, layout.meaning.kind, behaviour);
    if (const auto* refusal = std::get_if<Refusal>(&likely)) return *refusal;
    unit = std::get<Unit>(likely);
  }
  layout.unit = *unit;
  if (auto refusal = check_unit(inference, layout.meaning.kind, *unit)) return refusal;
  inference.said.push_back(said(layout.meaning.kind, *unit, was_said));
  return std::nullopt;
}

}  // namespace wattweek::logs
