#pragma once
// What a factor's value means, in words.

#include <string>

#include "wattweek/report/what_if.hpp"

namespace wattweek::report {

/// `prices`, `the use of Film streaming`, `idle watts of Old rack server`.
std::string factor_words(const model::Study& study, const decide::Factor& factor);

/// What the factor's value comes to, such as `0.08 EUR (night), 0.15 EUR (day), tax included`,
/// `12.5 stream-hours a week`, `62 W`, `510.00 EUR`; empty where that is no single figure.
std::string meaning_of(const WhatIfShown& shown, const decide::Factor& factor, double value);

/// Every price per kWh at so many times today's, with tax; empty where blocks or many bands make
/// that a table of its own.
std::string prices_at(const model::Tariff& tariff, double factor);

}  // namespace wattweek::report
