#pragma once
// An electricity contract with every kind of band, block and charge.

#include <string>

#include "random_window.hpp"

namespace wattweek::oracle {

struct TariffText {
  std::string plain_keys;  ///< Those that stand before the first table.
  std::string tables;
};

/// `prefix` is put before the names of tables: "tariff." where the contract stands in the study.
TariffText random_tariff(Dice& dice, const Period& period, const std::string& prefix);

}  // namespace wattweek::oracle
