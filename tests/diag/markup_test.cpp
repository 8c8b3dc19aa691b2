#include "wattweek/diag/markup.hpp"

#include <doctest/doctest.h>

namespace wattweek::diag {
namespace {

TEST_CASE("a name cannot leave its place in XML and HTML") {
  CHECK(markup_text("<b a=\"1\" c='2'>&</b>") ==
        "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;&lt;/b&gt;");
  CHECK(markup_text("a\nb\x01") == "a\\x0Ab\\x01");
  CHECK(markup_text("\xFF \uFFFE \u202E") == "\\xFF \\xEF\\xBF\\xBE \\xE2\\x80\\xAE");
  CHECK(markup_text("Å, \U0001F600") == "Å, \U0001F600");
}

}  // namespace
}  // namespace wattweek::diag
