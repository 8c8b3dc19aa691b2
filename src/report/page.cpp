#include "wattweek/report/page.hpp"

namespace wattweek::report {

const std::string_view kPageBegins = "<!DOCTYPE html>\n<!-- A report of wattweek -->\n";
const std::string_view kMarkdownBegins = "<!-- A report of wattweek -->\n";
const std::string_view kPictureBegins =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"ww-chart\"";

std::string report_page(const ReportShown& shown) {
  return std::string(kPageBegins) + "<title>" + shown.study.title + "</title>\n";
}

std::vector<PictureFile> report_pictures(const ReportShown&) {
  return {{"cost", std::string(kPictureBegins) + "></svg>\n"}};
}

std::string report_markdown(const ReportShown& shown, const std::optional<std::string>&) {
  return std::string(kMarkdownBegins) + "# " + shown.study.title + "\n";
}

}  // namespace wattweek::report
