#include "support.hpp"

#include <map>
#include <variant>

namespace wattweek::read_tests {

namespace {

/// The files that the studies of these tests may name.
const std::map<std::string, std::string>& files() {
  static const std::map<std::string, std::string> texts{
      {"box.toml", kProfile + "cams = 1\n"},
      {"plain.toml", "[watts]\nidle = 10\n"},
      {"wrong.toml", "[watts]\nidle = -1\n"},
      {"broken.toml", "[watts\n"},
      {"day.toml", kTariff},
      {"gap.toml",
       "currency = \"EUR\"\n[[band]]\nname = \"day\"\nprice = 0.3\nhours = "
       "\"00:00-23:00\"\n"},
      {"dear.toml", "currency = \"euro\"\n"},
  };
  return texts;
}

read::Surroundings surroundings() {
  using Loaded = std::variant<read::SourceText, read::Unreadable>;
  using Zone = std::variant<calendar::ZoneRules, calendar::NoZone>;
  const auto load = [](const std::string& path, const std::string&, read::ShippedKind) -> Loaded {
    const std::string name = path.substr(0, 2) == "./" ? path.substr(2) : path;
    const auto found = files().find(name);
    if (found == files().end()) return read::Unreadable{"there is no such file"};
    return read::SourceText{path, name, found->second};
  };
  const auto zone = [](const std::string& name, std::chrono::year_month, int) -> Zone {
    if (name == "Etc/UTC") return calendar::ZoneRules{};
    return calendar::NoZone{"no such time zone; did you mean \"Etc/UTC\"?"};
  };
  return {load, zone};
}

}  // namespace

std::string edited(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  REQUIRE(text.find(from, at + 1) == std::string::npos);
  return text.replace(at, from.size(), to);
}

std::string shown(const std::vector<diag::Diagnostic>& problems) {
  std::string text;
  for (const diag::Diagnostic& problem : problems) {
    text += (text.empty() ? "" : "\n") + diag::to_text(problem);
  }
  return text;
}

read::Read<read::StudyInput> read_study(const std::string& text) {
  return read::study({"study.toml", "study.toml", text}, surroundings());
}
read::Read<std::vector<read::StudyInput>> read_study_under(
    const std::string& text, const std::vector<std::string>& tariffs) {
  const std::vector<std::string> names{"one.toml", "two.toml", "three.toml"};
  std::vector<read::SourceText> sources;
  for (std::size_t t = 0; t < tariffs.size(); ++t) {
    sources.push_back({names.at(t), names.at(t), tariffs[t]});
  }
  return read::study_under({"study.toml", "study.toml", text}, sources, surroundings());
}
read::Read<model::Profile> read_profile(const std::string& text) {
  return read::profile({"box.toml", "box.toml", text});
}
read::Read<model::Tariff> read_tariff(const std::string& text) {
  return read::tariff({"day.toml", "day.toml", text});
}

}  // namespace wattweek::read_tests
