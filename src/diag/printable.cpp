#include "wattweek/diag/printable.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <iterator>

namespace wattweek::diag {
namespace {

struct CodePoint {
  std::uint32_t value = 0;
  std::size_t bytes = 1;
  bool valid = false;
};

unsigned byte_at(std::string_view text, std::size_t i) {
  return static_cast<unsigned char>(text[i]);
}

/// The code point at the start of `text`; one invalid byte where there is none (overlong forms,
/// surrogates and values beyond U+10FFFF are none).
CodePoint first_code_point(std::string_view text) {
  const unsigned lead = byte_at(text, 0);
  if (lead < 0x80) return {lead, 1, true};
  const std::size_t bytes = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return {lead, 1, false};
  std::uint32_t value = lead & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte_at(text, i) & 0xC0U) != 0x80U) return {lead, 1, false};
    value = value << 6U | (byte_at(text, i) & 0x3FU);
  }
  const bool overlong = (bytes == 3 && value < 0x800) || (bytes == 4 && value < 0x10000);
  const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
  if (overlong || surrogate || value > 0x10FFFF) return {lead, 1, false};
  return {value, bytes, true};
}

bool is_harmless(const CodePoint& point) {
  const std::uint32_t c = point.value;
  const bool control = c < 0x20 || (c >= 0x7F && c < 0xA0);
  const bool separator = c == 0x2028 || c == 0x2029;
  const bool bidirectional = (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
  return point.valid && !control && !separator && !bidirectional;
}

/// Columns of one character. The formatting library pads by them, so the padding tells them.
std::size_t columns_of(std::string_view character, const CodePoint& point) {
  if (!point.valid || point.value < 0x80) return 1;
  constexpr std::size_t kPadded = 4;
  const std::size_t blanks = fmt::formatted_size("{:<{}}", character, kPadded) - character.size();
  return kPadded - blanks;
}

void append_hex(std::string& out, unsigned value) {
  fmt::format_to(std::back_inserter(out), "\\x{:02X}", value);
}

}  // namespace

std::string printable(std::string_view text) {
  std::string shown;
  shown.reserve(text.size());
  while (!text.empty()) {
    const CodePoint point = first_code_point(text);
    if (is_harmless(point)) {
      shown += text.substr(0, point.bytes);
    } else if (point.value < 0x100) {
      append_hex(shown, point.value);
    } else {
      for (std::size_t i = 0; i < point.bytes; ++i) append_hex(shown, byte_at(text, i));
    }
    text.remove_prefix(point.bytes);
  }
  return shown;
}

std::size_t column_count(std::string_view text) {
  std::size_t columns = 0;
  while (!text.empty()) {
    const CodePoint point = first_code_point(text);
    columns += columns_of(text.substr(0, point.bytes), point);
    text.remove_prefix(point.bytes);
  }
  return columns;
}

std::size_t bytes_within(std::string_view text, std::size_t columns) {
  std::size_t bytes = 0;
  while (bytes < text.size()) {
    const CodePoint point = first_code_point(text.substr(bytes));
    const std::size_t needed = columns_of(text.substr(bytes, point.bytes), point);
    if (needed > columns) break;
    columns -= needed;
    bytes += point.bytes;
  }
  return bytes;
}

}  // namespace wattweek::diag
