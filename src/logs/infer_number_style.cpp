// Whether 1,234 is more than a thousand or little more than one.

#include "infer.hpp"
#include "wattweek/diag/printable.hpp"

namespace wattweek::logs {
namespace {

struct Evidence {
  MarkEvidence point{};
  MarkEvidence comma{};
  std::size_t first_row = 0;  ///< Where a mark may be either.
  std::size_t last_new = 0;   ///< Where the second of two decimal marks was first seen.
};

Evidence evidence_in(const Sample& sample, std::size_t column) {
  Evidence evidence;
  for (std::size_t row = 0; row < sample.rows(); ++row) {
    const std::string_view field = sample.field(row, column);
    if (!looks_like_number(field)) continue;
    const bool was_either = evidence.point.either || evidence.comma.either;
    const bool was_both = evidence.point.decimal && evidence.comma.decimal;
    weigh(field, '.', evidence.point);
    weigh(field, ',', evidence.comma);
    if (!was_either && (evidence.point.either || evidence.comma.either)) evidence.first_row = row;
    if (!was_both && evidence.point.decimal && evidence.comma.decimal) evidence.last_new = row;
  }
  return evidence;
}

// What the marks of a column can only mean; nothing where both readings fit.
std::optional<NumberStyle> style_of(const Evidence& evidence, char delimiter) {
  const MarkEvidence &point = evidence.point, &comma = evidence.comma;
  if (point.decimal || comma.thousands) return NumberStyle{'.', comma.thousands};
  if (comma.decimal || point.thousands) return NumberStyle{',', point.thousands};
  if (!point.either && !comma.either) return NumberStyle{delimiter == ',' ? '.' : kNoMark, false};
  // Who sets columns apart by commas does not write them in numbers, unless within quotes.
  const bool comma_apart = delimiter == ',' && !comma.either;
  return comma_apart ? std::optional(NumberStyle{'.', false}) : std::nullopt;
}

// What numbers of the other columns show, where they agree.
std::optional<NumberStyle> style_beside(const Inference& inference, const Evidence& unclear) {
  MarkEvidence point{}, comma{};
  const Sample& sample = inference.sample;
  for (std::size_t c = 0; c < sample.columns(); ++c) {
    const TimeLayout& time = inference.layout.time;
    if (c == time.column || c == time.clock_column) continue;
    const Evidence evidence = evidence_in(sample, c);
    point.decimal |= evidence.point.decimal || evidence.comma.thousands;
    comma.decimal |= evidence.comma.decimal || evidence.point.thousands;
  }
  if (point.decimal == comma.decimal) return std::nullopt;
  return point.decimal ? NumberStyle{'.', unclear.comma.either}
                       : NumberStyle{',', unclear.point.either};
}

Refusal contradiction(const Inference& inference, std::size_t row) {
  return {"numbers in " + column_name(inference.sample, inference.layout.value_column) +
              " have a decimal point in some rows and a decimal comma in others, such as '" +
              diag::printable(inference.sample.field(row, inference.layout.value_column)) +
              "'; expected one of them throughout",
          row, inference.layout.value_column};
}

}  // namespace

Step infer_number_style(Inference& inference) {
  Layout& layout = inference.layout;
  const Evidence evidence = evidence_in(inference.sample, layout.value_column);
  if (evidence.point.decimal && evidence.comma.decimal) {
    return contradiction(inference, evidence.last_new);
  }
  if (inference.options.decimal) {
    layout.style.decimal = *inference.options.decimal;
    layout.style.groups = true;
    return std::nullopt;
  }
  auto style = style_of(evidence, layout.delimiter);
  if (!style) style = style_beside(inference, evidence);
  if (!style) {
    return Refusal{
        "'" + diag::printable(inference.sample.field(evidence.first_row, layout.value_column)) +
            "' may be thousands or a fraction; say what the decimal mark "
            "is by --decimal . or --decimal ,",
        evidence.first_row, layout.value_column};
  }
  layout.style = *style;
  if (style->decimal == ',' || style->groups) {
    inference.said.push_back(std::string("numbers: decimal ") +
                             (style->decimal == ',' ? "comma" : "point") +
                             (style->groups ? ", with thousands marks" : "") + " (--decimal)");
  }
  return std::nullopt;
}

}  // namespace wattweek::logs
