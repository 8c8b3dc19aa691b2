#include "json_parts.hpp"

#include <fmt/format.h>

namespace wattweek::report {

Json study_part(const model::Study& study, const decide::Assessment& all) {
  return {{"title", study.title},
          {"time_zone", study.time_zone},
          {"start", calendar::to_text(study.start) + "-01"},
          {"months", study.months},
          {"days", all.days},
          {"hours", number(all.hours)}};
}

Json notes_part(const std::vector<decide::Note>& notes) {
  Json part = Json::array();
  for (const decide::Note& note : notes) {
    part.push_back({{"code", note.code}, {"where", where_text(note)}, {"text", note.text}});
  }
  return part;
}

std::string json_text(const Json& json, int indent) {
  const std::string raw = json.dump(indent, ' ', false, Json::error_handler_t::replace);
  std::string text;
  text.reserve(raw.size() + 1);
  for (std::size_t i = 0; i < raw.size(); ++i) {
    const auto byte = static_cast<unsigned char>(raw[i]);
    const auto next = i + 1 < raw.size() ? static_cast<unsigned char>(raw[i + 1]) : 0U;
    if (byte == 0x7F) {
      text += "\\u007f";
    } else if (byte == 0xC2 && next < 0xA0) {
      text += fmt::format("\\u{:04x}", next);
      ++i;
    } else {
      text += raw[i];
    }
  }
  return text += '\n';
}

}  // namespace wattweek::report
