#pragma once
// Start here: a second, deliberately dumb reckoning of a whole study, which the engine is held
// against. It walks the study minute by minute, writes down every joint outcome of the units in
// use, and reckons every bill twice and subtracts. Nothing is folded, merged or solved; the only
// economy is that a minute in a situation that was seen before is not reckoned again. It shares
// the model with the engine, and nothing else.

#include "reckoned.hpp"
#include "wattweek/model/study.hpp"

namespace wattweek::oracle {

/// \pre The study is valid, as a reader returns it.
Reckoned reckon_dumbly(const model::Study& study);

}  // namespace wattweek::oracle
