#include "wattweek/report/cautions.hpp"

#include "document.hpp"

namespace wattweek::report {

std::string_view measuring_caution() {
  return "Before a meter goes between plug and socket: shut down, mind its rated current, chain no "
         "power strips, open nothing (docs/safety.md).";
}

std::string_view switching_caution() {
  return "Before power is cut, shut down. A gateway, router or camera host at rest takes telephone "
         "and emergency calls, alarms and remote monitoring with it (docs/safety.md).";
}

std::string_view highest_watts_caution() {
  return "The highest watts are a modelled mean, not a figure for sizing a fuse, cable, timer plug "
         "or UPS: peaks lie above it. Local rules and licensed people decide there "
         "(docs/safety.md).";
}

std::string cautions_text(const std::vector<std::string_view>& cautions, const Style& style) {
  Section section;
  for (const std::string_view caution : cautions) {
    section.blocks.emplace_back(Paragraph{std::string(caution)});
  }
  return lay_out_text({"", {std::move(section)}}, style);
}

}  // namespace wattweek::report
