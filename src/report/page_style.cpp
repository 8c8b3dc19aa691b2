#include "page_style.hpp"

#include <fmt/format.h>

#include "wattweek/chart/frame.hpp"
#include "wattweek/chart/palette.hpp"

namespace wattweek::report {
namespace {

std::string colours(const chart::Palette& palette) {
  return fmt::format(":root{{--paper:{};--ink:{};--muted:{};--rule:{};--link:{};--answer:{}}}\n",
                     palette.paper, palette.ink, palette.muted, palette.grid, palette.series[0],
                     palette.series[1]);
}

// One column of text that is read from top to bottom; pictures of one kind stand side by side where
// there is room. The answer is set larger, behind a bar of its own colour.
constexpr std::string_view kRules = R"(*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif}
main{max-width:62rem;margin:0 auto;padding:1rem 1rem 4rem}
p,ul,h1,h2,h3{max-width:42rem;overflow-wrap:anywhere}
h1{font-size:1.9rem;line-height:1.2;margin:1rem 0}
section{margin-top:3.5rem;border-top:2px solid var(--ink)}
h2{font-size:1.4rem;line-height:1.25;margin:.75rem 0}
h3{font-size:1.1rem;line-height:1.3;margin:2rem 0 .5rem}
.answer{max-width:44rem;border-left:.4rem solid var(--answer);padding:0 0 0 1rem;font-size:1.2rem;line-height:1.45}
.answer p{margin:.5rem 0}
nav{margin:1.5rem 0}
nav ul{list-style:none;margin:0;padding:0;max-width:none;display:flex;flex-wrap:wrap;gap:.15rem 1.25rem}
nav a{display:inline-block;padding:.25rem 0}
a{color:var(--link)}
.on-paper{display:none}
figure{margin:1rem 0;max-width:34rem}
figcaption{font-weight:600;margin:0 0 .25rem;overflow-wrap:anywhere}
figure svg{display:block;width:100%}
.reading,caption{color:var(--muted);font-size:.95rem}
.reading{margin:.25rem 0}
.side-by-side{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,26rem),1fr));gap:0 2rem}
details{margin:.5rem 0}
summary{cursor:pointer;padding:.25rem 0;overflow-wrap:anywhere}
details>:not(summary){margin-left:1rem}
figure details>:not(summary){margin-left:0}
.wide{overflow-x:auto;margin:1rem 0;max-width:100%}
table{border-collapse:collapse;font-variant-numeric:tabular-nums}
caption{text-align:left;padding:0 0 .35rem;max-width:calc(100vw - 1.5rem)}
th,td{padding:.25rem .75rem .25rem 0;text-align:right;vertical-align:top}
td{white-space:nowrap}
thead th{vertical-align:bottom;font-weight:600;min-width:5rem}
thead th:first-child,tbody th,.words{text-align:left}
td.words{white-space:normal;min-width:7rem;max-width:20rem;overflow-wrap:anywhere}
tbody th{font-weight:400;min-width:7rem;max-width:20rem;overflow-wrap:anywhere}
thead{border-bottom:1px solid var(--muted)}
tbody tr{border-bottom:1px solid var(--rule)}
pre{overflow-x:auto;margin:.5rem 0;font:.85rem/1.45 ui-monospace,monospace;tab-size:4}
@media (max-width:30rem){main{padding:.5rem .75rem 3rem}figure{margin:.75rem -.5rem}figcaption,.reading,figure details{padding:0 .5rem}}
@page{size:A4;margin:16mm 14mm}
@media print{
html{font-size:10pt}
main{max-width:none;padding:0}
nav{display:none}
.on-paper{display:block;color:var(--muted)}
section{margin-top:1.5rem}
h2{break-after:avoid}
h3,figcaption{break-after:avoid}
figure,tr,.answer,.wide,li{break-inside:avoid}
figure{max-width:12.5cm}
.side-by-side{grid-template-columns:repeat(2,minmax(0,1fr));gap:0 1rem}
.side-by-side:has(details[open]){grid-template-columns:minmax(0,1fr)}
.side-by-side figure{margin:.75rem 0}
details:not([open]){display:none}
#files details{display:block}
.wide,pre{overflow:visible}
table{font-size:8pt}
th,td{padding-right:.4rem}
.wide td{white-space:normal}
#candidates td{white-space:nowrap}
thead th,tbody th,td.words{min-width:0;overflow-wrap:anywhere}
pre{white-space:pre-wrap;overflow-wrap:anywhere}
}
)";

}  // namespace

std::string page_style() {
  return fmt::format("{}@media screen and (prefers-color-scheme:dark){{\n{}}}\n{}{}",
                     colours(chart::kLight), colours(chart::kDark), kRules, chart::style_sheet());
}

}  // namespace wattweek::report
