// How a page is laid out, from parts made by hand.

#include <doctest/doctest.h>

#include "page_parts.hpp"

namespace wattweek::report {
namespace {

Page page_of(std::vector<PageBlock> blocks) {
  return {"Title", {"The answer."}, {{"first", "A question?", std::move(blocks)}}, {}};
}

std::string body_of(const Page& page) {
  const std::string html = lay_out_page(page);
  return html.substr(html.find("<section"));
}

Figure a_figure() {
  return {"cost",
          "What does it cost?",
          "Cost",
          "Box: 12 EUR.",
          "How to read it.",
          chart::Bars{{}, "EUR a year", {{"Box", 12, {}, "12 EUR"}}},
          {{{"", Align::left}, {"EUR"}}, {{"Box", "12.00"}}}};
}

bool holds(const std::string& text, const std::string& wanted) {
  return text.find(wanted) != std::string::npos;
}

TEST_CASE("page: begins as pages do, fetches nothing, runs nothing") {
  const std::string html = lay_out_page(page_of({Paragraph{"Words."}}));
  CHECK(html.rfind(std::string(kPageBegins), 0) == 0);
  CHECK(holds(html,
              "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
              "style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'\">"));
  for (const char* word : {"<script", "http://", "https://", "url(", "@import", "src="}) {
    CAPTURE(word);
    CHECK_FALSE(holds(html, word));
  }
}

TEST_CASE("page: the answer stands before all questions") {
  const std::string html = lay_out_page(page_of({Paragraph{"Words."}}));
  CHECK(html.find("<p>The answer.</p>") < html.find("<a href=\"#first\">A question?</a>"));
  CHECK(html.find("<a href=\"#first\">") < html.find("<section id=\"first\">"));
}

TEST_CASE("page: no name can leave its place") {
  Page page =
      page_of({Paragraph{"<script>alert(1)</script>"}, List{{"a \"quoted\" & 'quoted' item"}},
               Subheading{"<h1>"}, Verbatim{"</summary>.toml", "title = \"</pre>\"\n"}});
  page.title = "</title><script>";
  const std::string html = lay_out_page(page);
  CHECK_FALSE(holds(html, "<script"));
  CHECK_FALSE(holds(html, "</pre>\""));
  CHECK(holds(html, "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>"));
  CHECK(holds(html, "<li>a &quot;quoted&quot; &amp; &#39;quoted&#39; item</li>"));
  CHECK(holds(html, "<h3>&lt;h1&gt;</h3>"));
  CHECK(holds(html, "<pre tabindex=\"0\">title = &quot;&lt;/pre&gt;&quot;\n</pre>"));
}

TEST_CASE(
    "page: a name from right to left is kept in its place, wherever it stands in a sentence") {
  Page page = page_of({Paragraph{"\u05E9\u05E8\u05EA 2 costs 12 EUR, \u05E9\u05E8\u05EA 13 EUR."}});
  page.names = {"\u05E9\u05E8\u05EA", "Box", "\u05E9\u05E8\u05EA 2"};
  CHECK(holds(body_of(page),
              "<p><bdi>\u05E9\u05E8\u05EA 2</bdi> costs 12 EUR, <bdi>\u05E9\u05E8\u05EA</bdi> 13 "
              "EUR.</p>"));
}

TEST_CASE("page: a table names its rows by the first column, and words stand to the left") {
  const Table table{{{"", Align::left}, {"part of", Align::left}, {"kWh"}},
                    {{"box", "all", "12.3"}}};
  CHECK(body_of(page_of({NamedTable{"devices", "Devices", table}})) ==
        "<section id=\"first\">\n<h2>A question?</h2>\n"
        "<div class=\"wide\" tabindex=\"0\">\n<table id=\"devices\">\n<caption>Devices</caption>\n"
        "<thead>\n<tr><td></td><th scope=\"col\" class=\"words\">part of</th>"
        "<th scope=\"col\">kWh</th></tr>\n</thead>\n<tbody>\n"
        "<tr><th scope=\"row\">box</th><td class=\"words\">all</td><td>12.3</td></tr>\n</tbody>\n"
        "</table>\n</div>\n</section>\n</main>\n</body>\n</html>\n");
}

TEST_CASE("page: a picture has words for those who cannot see it, and its numbers a click away") {
  const Figure figure = a_figure();
  const std::string body = body_of(page_of({Figures{{figure}}}));
  CHECK(holds(body, "<figure id=\"cost\">\n<figcaption>Cost</figcaption>\n<svg "));
  CHECK(holds(body, "<title id=\"cost-title\">What does it cost?</title>"));
  CHECK(holds(body, "<desc id=\"cost-desc\">Box: 12 EUR.</desc>"));
  CHECK(holds(body,
              "</svg>\n<p class=\"reading\">How to read it.</p>\n<details>\n"
              "<summary>The numbers</summary>\n"));
  CHECK(holds(body, "<table id=\"table-cost\">\n<caption>What does it cost?</caption>"));
  CHECK_FALSE(holds(body, "side-by-side"));
  Figure other = figure;
  other.name = "other";
  CHECK(holds(body_of(page_of({Figures{{figure, other}}})), "<div class=\"side-by-side\">"));
}

TEST_CASE("page: a picture has its style and its heading only where it stands alone") {
  const Figure figure{"cost", "What does it cost?",
                      "Cost", "",
                      "",     chart::Bars{{}, "EUR a year", {{"Box", 12, {}, "12 EUR"}}},
                      {}};
  const std::string alone = drawn(figure, Drawn::alone);
  CHECK(alone.rfind(std::string(kPictureBegins), 0) == 0);
  CHECK(holds(alone, "<style>"));
  CHECK(holds(alone, ">What does it cost?</text>"));
  const std::string in_page = drawn(figure, Drawn::in_page);
  CHECK_FALSE(holds(in_page, "<style>"));
  CHECK_FALSE(holds(in_page, ">What does it cost?</text>"));
}

TEST_CASE("page: a file is shown with its tabs and lines, and what could do harm made visible") {
  const std::string body =
      body_of(page_of({Verbatim{"study.toml", "a = 1\r\n\tb = \"\x1B[2J\"\n\n# end"}}));
  CHECK(holds(body,
              "<summary>study.toml (4 lines)</summary>\n"
              "<pre tabindex=\"0\">a = 1\n\tb = &quot;\\x1B[2J&quot;\n\n# end</pre>"));
}

TEST_CASE("page in Markdown: a file cannot end its own fence") {
  const std::string text =
      lay_out_page_in_markdown(page_of({Verbatim{"study.toml", "# ```\n# ````\n"}}), std::nullopt);
  CHECK(text ==
        "<!-- A report of wattweek -->\n# Title\n\nThe answer.\n\n## A question?\n\n"
        "study.toml:\n\n`````toml\n# ```\n# ````\n`````\n");
}

TEST_CASE(
    "page in Markdown: pictures are named where there are any, and their numbers stand below") {
  const Page page = page_of({Figures{{a_figure()}}});
  CHECK(holds(lay_out_page_in_markdown(page, "pictures"),
              "What does it cost?\n\n![Box: 12 EUR.](pictures/cost.svg)\n\nHow to read it.\n\n"
              "| | EUR |\n| :-- | --: |\n| Box | 12.00 |\n"));
  CHECK_FALSE(holds(lay_out_page_in_markdown(page, std::nullopt), ".svg"));
}

}  // namespace
}  // namespace wattweek::report
