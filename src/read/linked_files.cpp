#include "linked_files.hpp"

#include <utility>

#include "document.hpp"
#include "profile_reader.hpp"

namespace wattweek::read {

namespace {

constexpr std::string_view kProfilePathAccepted =
    "the path of a profile file in quotes, or \"shipped:NAME\"";
constexpr std::string_view kTariffPathAccepted =
    "the path of a tariff file in quotes, \"shipped:NAME\", or a table [tariff]";

std::optional<std::string> read_path(const Value& value, ShippedKind kind) {
  const bool is_profile = kind == ShippedKind::profile;
  const std::string_view accepted = is_profile ? kProfilePathAccepted : kTariffPathAccepted;
  if (is_profile && value.node().is_table()) {
    value.refuse(accepted,
                 "the profile's own tables go into the device itself: [candidate.device.watts]");
    return std::nullopt;
  }
  return read_text(value, accepted);
}

}  // namespace

std::optional<SourceText> LinkedFiles::load(const Value& path, ShippedKind kind) {
  const auto text = read_path(path, kind);
  if (!text) return std::nullopt;
  auto loaded = surroundings_->load(*text, path.file().name(), kind);
  if (const Unreadable* unreadable = std::get_if<Unreadable>(&loaded)) {
    path.complain(unreadable->reason);
    return std::nullopt;
  }
  return std::get<SourceText>(std::move(loaded));
}

std::shared_ptr<const model::Profile> LinkedFiles::read_profile_text(const SourceText& source) {
  File file(source, FileKind::profile);
  std::shared_ptr<const model::Profile> profile;
  if (const auto root = parse(file)) {
    profile = std::make_shared<const model::Profile>(read_profile_file(file, *root));
  }
  problems_.insert(problems_.end(), file.problems().begin(), file.problems().end());
  return file.problems().empty() ? profile : nullptr;
}

std::shared_ptr<const model::Profile> LinkedFiles::profile(const Value& path) {
  const auto source = load(path, ShippedKind::profile);
  if (!source) return nullptr;
  const auto known = profiles_.find(source->identity);
  if (known != profiles_.end()) return known->second;
  auto profile = read_profile_text(*source);
  profiles_.emplace(source->identity, profile);
  return profile;
}

std::optional<TariffDraft> LinkedFiles::tariff(const Value& path,
                                               const model::Holidays& study_holidays) {
  const auto source = load(path, ShippedKind::tariff);
  return source ? tariff(*source, study_holidays) : std::nullopt;
}

std::optional<TariffDraft> LinkedFiles::tariff(const SourceText& source,
                                               const model::Holidays& study_holidays) {
  File file(source, FileKind::tariff);
  std::optional<TariffDraft> draft;
  if (const auto root = parse(file)) draft = read_tariff_file(file, *root, study_holidays);
  problems_.insert(problems_.end(), file.problems().begin(), file.problems().end());
  if (!file.problems().empty()) return std::nullopt;
  return draft;
}

}  // namespace wattweek::read
