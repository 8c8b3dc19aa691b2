// Whether 1,234 is more than a thousand or little more than one.

#include "infer.hpp"

namespace wattweek::logs {
namespace {

struct Evidence {
  MarkEvidence point{};
  MarkEvidence comma{};
  std::size_t first_row = 0;  ///< Where a mark may be either.
};

Evidence evidence_in(const Sample& sample, std::size_t column) {
  Evidence evidence;
  for (std::size_t row = 0; row < sample.rows(); ++row) {
    const std::string_view field = sample.field(row, column);
    if (!looks_like_number(field)) continue;
    const bool was_either = evidence.point.either || evidence.comma.either;
    weigh(field, '.', evidence.point);
    weigh(field, ',', evidence.comma);
    if (!was_either && (evidence.point.either || evidence.comma.either)) evidence.first_row = row;
  }
  return evidence;
}

// What the marks of a column can only mean; nothing where both readings fit.
std::optional<NumberStyle> style_of(const Evidence& evidence, char delimiter) {
  const MarkEvidence &point = evidence.point, &comma = evidence.comma;
  if (point.decimal || comma.thousands) return NumberStyle{'.', comma.thousands};
  if (comma.decimal || point.thousands) return NumberStyle{',', point.thousands};
  if (!point.either && !comma.either) return NumberStyle{'.', false};
  // Who sets columns apart by commas does not write them in numbers, unless within quotes.
  const bool comma_apart = delimiter == ',' && !comma.either;
  return comma_apart ? std::optional(NumberStyle{'.', false}) : std::nullopt;
}

Refusal contradiction(const Inference& inference) {
  return {"numbers in " + column_name(inference.sample, inference.layout.value_column) +
              " have a decimal point in some rows and a decimal comma in others; expected one of "
              "them throughout",
          0, inference.layout.value_column};
}

}  // namespace

Step infer_number_style(Inference& inference) {
  Layout& layout = inference.layout;
  const Evidence evidence = evidence_in(inference.sample, layout.value_column);
  if (evidence.point.decimal && evidence.comma.decimal) return contradiction(inference);
  if (inference.options.decimal) {
    layout.style.decimal = *inference.options.decimal;
    layout.style.groups = true;
    return std::nullopt;
  }
  const auto style = style_of(evidence, layout.delimiter);
  if (!style) {
    return Refusal{
        "'" + std::string(inference.sample.field(evidence.first_row, layout.value_column)) +
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
