#include "wattweek/report/page.hpp"

#include "page_answer.hpp"
#include "page_parts.hpp"
#include "page_sections.hpp"

namespace wattweek::report {
namespace {

std::vector<std::string> names_of(const model::Study& study) {
  std::vector<std::string> names = {study.title, study.tariff.name};
  for (const model::Band& band : study.tariff.bands) names.push_back(band.name);
  for (const model::Workload& workload : study.workloads) {
    names.push_back(workload.name);
    names.push_back(workload.unit);
  }
  for (const model::Candidate& candidate : study.candidates) {
    names.push_back(candidate.name);
    for (const model::Device& device : candidate.devices) {
      names.push_back(device.name);
      names.push_back(device.profile->name);
    }
  }
  return names;
}

}  // namespace

const std::string_view kPageBegins = "<!DOCTYPE html>\n<!-- A report of wattweek -->\n";
const std::string_view kMarkdownBegins = "<!-- A report of wattweek -->\n";
const std::string_view kPictureBegins =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"ww-chart\"";

Page page(const ReportShown& shown) {
  const Shown s = report::shown(shown.study, shown.assessment);
  Page page{shown.study.title, answer(s), {}, names_of(shown.study)};
  page.sections = {costs_section(s), week_section(s, shown), where_section(s),
                   when_section(s, shown)};
  const bool ranked = shown.prices && shown.study.candidates.size() > 1;
  if (ranked || shown.assessment.uncertainty) page.sections.push_back(change_section(s, shown));
  if (!shown.assessment.notes.empty()) page.sections.push_back(notes_section(s, shown));
  page.sections.push_back(bill_section(s, shown));
  page.sections.push_back(method_section(s, shown));
  page.sections.push_back(files_section(shown));
  return page;
}

std::string report_page(const ReportShown& shown) { return lay_out_page(page(shown)); }

std::string drawn(const Figure& figure, Drawn how) {
  const bool alone = how == Drawn::alone;
  const chart::Frame frame{figure.name, figure.title, figure.alternative, alone, alone};
  return std::visit(
      [&frame](auto picture) {
        picture.frame = frame;
        return chart::svg(picture);
      },
      figure.picture);
}

std::vector<PictureFile> report_pictures(const ReportShown& shown) {
  std::vector<PictureFile> files;
  for (const PageSection& section : page(shown).sections) {
    for (const PageBlock& block : section.blocks) {
      const auto* figures = std::get_if<Figures>(&block);
      if (figures == nullptr) continue;
      for (const Figure& figure : figures->figures) {
        files.push_back({figure.name, drawn(figure, Drawn::alone)});
      }
    }
  }
  return files;
}

std::string report_markdown(const ReportShown& shown, const std::optional<std::string>& folder) {
  return lay_out_page_in_markdown(page(shown), folder);
}

}  // namespace wattweek::report
