#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "fixture.hpp"

namespace wattweek::report {
namespace {

using Json = nlohmann::ordered_json;
using Names = std::vector<std::string>;

Names members(const Json& object) {
  Names names;
  for (const auto& item : object.items()) names.push_back(item.key());
  return names;
}

Json parsed(Scope scope) { return Json::parse(json(study(), with_horizon(), scope)); }

TEST_CASE("json: members stand in their fixed order") {
  const Json all = parsed(Scope::compare);
  CHECK(members(all) ==
        Names{"format", "study", "tariff", "candidates", "bills", "notes", "comparison"});
  CHECK(members(all["study"]) == Names{"title", "time_zone", "start", "months", "days", "hours"});
  CHECK(members(all["tariff"]) == Names{"name", "currency"});
  const Json& box = all["candidates"][1];
  CHECK(members(box) == Names{"id", "name", "energy_kwh", "mean_w", "highest_w", "cost",
                              "blocks_cost", "minimum_cost", "co2_kg", "lower_bound", "months",
                              "bands", "states", "workloads", "base", "devices", "lifetime"});
  CHECK(members(box["months"][0]) == Names{"month", "hours", "energy_kwh", "cost"});
  CHECK(members(box["bands"][0]) == Names{"name", "hours", "energy_kwh", "cost"});
  CHECK(members(box["states"][0]) == Names{"state", "hours", "energy_kwh"});
  CHECK(members(box["workloads"][0]) ==
        Names{"id", "unit_hours", "unserved_unit_hours", "energy_kwh", "cost"});
  CHECK(members(box["base"]) == Names{"energy_kwh", "cost"});
  CHECK(members(box["devices"][0]) ==
        Names{"name", "count", "energy_kwh", "mean_w", "highest_w", "overload_hours"});
  CHECK(members(box["lifetime"]) ==
        Names{"years", "purchase", "energy_cost", "later_cost", "resale", "total", "present_cost"});
  CHECK(members(all["bills"]) == Names{"without", "with"});
  CHECK(members(all["bills"]["with"]) == Names{"rack", "palm"});
  CHECK(members(all["bills"]["without"][0]) ==
        Names{"month", "kwh", "standing", "bands", "blocks", "minimum_top_up", "tax", "total"});
  CHECK(members(all["comparison"]) == Names{"baseline", "rows"});
  CHECK(members(all["comparison"]["rows"][0]) ==
        Names{"id", "saves_kwh", "saves_cost", "extra_purchase", "payback_years", "overtaken_years",
              "discounted_payback_years", "saves_present_cost", "break_even_price_factor"});
}

TEST_CASE("json: months, bands, causes and devices hold the sums of the ledger") {
  const Json box = parsed(Scope::estimate)["candidates"][0];
  CHECK(box["months"][1]["month"] == "2027-02");
  CHECK(box["months"][1]["energy_kwh"] == 500.0);
  CHECK(box["bands"][0]["energy_kwh"] == 500.0);
  CHECK(box["base"]["energy_kwh"] == 800.0);
  CHECK(box["workloads"][0]["energy_kwh"] == 200.0);
  CHECK(box["workloads"][0]["unserved_unit_hours"] == 12.0);
  CHECK(box["devices"][0]["mean_w"].get<double>() == doctest::Approx(1e6 / 8760).epsilon(1e-12));
}

TEST_CASE("json: all four states are listed in their order") {
  const Json states = parsed(Scope::estimate)["candidates"][0]["states"];
  Names names;
  for (const Json& state : states) names.push_back(state["state"]);
  CHECK(names == Names{"off", "sleep", "idle", "active"});
  CHECK(states[2]["hours"] == 8000.0);
  CHECK(states[3]["energy_kwh"] == 200.0);
}

TEST_CASE("json: what is absent is null and estimate compares nothing") {
  const Json all = Json::parse(json(study(), assessment(), Scope::estimate));
  CHECK_FALSE(all.contains("comparison"));
  CHECK(all["candidates"][0]["lifetime"].is_null());
  CHECK(all["candidates"][0]["co2_kg"].is_null());
  const Json row =
      Json::parse(json(study(), assessment(), Scope::compare))["comparison"]["rows"][0];
  CHECK(row["overtaken_years"].is_null());
  CHECK(row["saves_present_cost"].is_null());
}

TEST_CASE("json: bills stand line by line for the household alone and with each candidate") {
  const Json bills = parsed(Scope::estimate)["bills"];
  CHECK(bills["without"][1]["month"] == "2027-02");
  CHECK(bills["without"][1]["kwh"] == 60.0);
  const Json& with = bills["with"]["palm"][0];
  CHECK(with["bands"][1] == Json{{"name", "day"}, {"kwh", 75.0}, {"amount", 30.0}});
  CHECK(with["total"] == 46.25);
}

TEST_CASE("json: notes name a candidate or a place") {
  decide::Assessment all = assessment();
  all.notes = {note("skipped", "palm", "it does not offer films"),
               placed_note("price-like-cents", "30 per kWh")};
  const Json notes = Json::parse(json(study(), all, Scope::estimate))["notes"];
  CHECK(notes == Json::parse(R"([
    {"code": "skipped", "where": "palm", "text": "it does not offer films"},
    {"code": "price-like-cents", "where": "study.toml:7:3", "text": "30 per kWh"}])"));
}

TEST_CASE("json: figures keep full precision and zero has no sign") {
  decide::Assessment all = assessment();
  all.candidates[0].cost.cost = units::money(0.1 + 0.2);
  all.candidates[0].cost.blocks_cost = units::money(-0.0);
  const std::string text = json(study(), all, Scope::estimate);
  CHECK(text.find("\"cost\": 0.30000000000000004,") != std::string::npos);
  CHECK(text.find("-0") == text.find("-01"));
  CHECK(text.find("-0.0") == std::string::npos);
}

TEST_CASE("json: what could command a terminal is escaped and foreign bytes are replaced") {
  model::Study named = study();
  named.title =
      "a\x1b[2J\x7f"
      "b\xC2\x9B"
      "c\xFF";
  const std::string text = json(named, assessment(), Scope::estimate);
  CHECK(text.find(R"("title": "a\u001b[2J\u007fb\u009bc)"
                  "\xEF\xBF\xBD\"") != std::string::npos);
}

TEST_CASE("json: quick has five members and an unnamed currency is null") {
  CHECK(quick_json({87.6, 10, 26.28}, "EUR") ==
        "{\n  \"format\": \"wattweek-quick-1\",\n  \"energy_kwh\": 87.6,\n  \"mean_w\": 10.0,\n"
        "  \"cost\": 26.28,\n  \"currency\": \"EUR\"\n}\n");
  CHECK(Json::parse(quick_json({87.6, 10, 26.28}, ""))["currency"].is_null());
}

}  // namespace
}  // namespace wattweek::report
