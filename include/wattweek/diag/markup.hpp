#pragma once
// Text made safe within XML and HTML.

#include <string>
#include <string_view>

namespace wattweek::diag {

/// Any bytes, made safe within an element or a quoted attribute of XML 1.0 and HTML: printable,
/// `&<>"'` as entities, and the two characters that XML forbids shown as `\xNN`.
std::string markup_text(std::string_view text);

}  // namespace wattweek::diag
