#pragma once
// The five quantities of this trade, as types that cannot be mistaken for each other:
// power, energy, time, money and the price of a kilowatt-hour. A number enters with its
// unit named (`watts(8)`) and leaves by naming one (`in_kilowatt_hours(e)`); only the
// products that mean something compile.

#include <compare>

namespace wattweek::units {

/// A number of one dimension. `Dimension` is an empty tag type.
template <class Dimension>
class Quantity {
 public:
  constexpr Quantity() = default;

  /// The bare number in the dimension's base unit (W, kWh, h, currency, currency per kWh).
  /// Prefer the named conversions below.
  static constexpr Quantity from_base(double base) { return Quantity(base); }
  constexpr double in_base() const { return base_; }

  constexpr Quantity& operator+=(Quantity other) {
    base_ += other.base_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    base_ -= other.base_;
    return *this;
  }
  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return Quantity(a.base_ + b.base_);
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return Quantity(a.base_ - b.base_);
  }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.base_); }
  friend constexpr Quantity operator*(Quantity a, double factor) {
    return Quantity(a.base_ * factor);
  }
  friend constexpr Quantity operator*(double factor, Quantity a) {
    return Quantity(factor * a.base_);
  }
  friend constexpr Quantity operator/(Quantity a, double divisor) {
    return Quantity(a.base_ / divisor);
  }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.base_ / b.base_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  constexpr explicit Quantity(double base) : base_(base) {}
  double base_ = 0;
};

using Power = Quantity<struct PowerDimension>;          ///< Real power at the wall socket, W.
using Energy = Quantity<struct EnergyDimension>;        ///< Energy drawn or billed, kWh.
using Hours = Quantity<struct TimeDimension>;           ///< Elapsed time, h.
using Money = Quantity<struct MoneyDimension>;          ///< An amount in the tariff's currency.
using UnitPrice = Quantity<struct UnitPriceDimension>;  ///< Currency per kWh.

constexpr Power watts(double w) { return Power::from_base(w); }
constexpr Energy kilowatt_hours(double kwh) { return Energy::from_base(kwh); }
constexpr Hours hours(double h) { return Hours::from_base(h); }
constexpr Money money(double amount) { return Money::from_base(amount); }
constexpr UnitPrice per_kilowatt_hour(double price) { return UnitPrice::from_base(price); }

constexpr double in_watts(Power p) { return p.in_base(); }
constexpr double in_kilowatt_hours(Energy e) { return e.in_base(); }
constexpr double in_hours(Hours t) { return t.in_base(); }
constexpr double in_currency(Money m) { return m.in_base(); }
constexpr double in_currency_per_kilowatt_hour(UnitPrice p) { return p.in_base(); }

/// Power held for a time is energy: 1000 W for 1 h is 1 kWh.
constexpr Energy operator*(Power p, Hours t) {
  return kilowatt_hours(in_watts(p) * in_hours(t) / 1000.0);
}
constexpr Energy operator*(Hours t, Power p) { return p * t; }

/// Energy over a time is its mean power; the time must not be zero.
constexpr Power operator/(Energy e, Hours t) {
  return watts(in_kilowatt_hours(e) * 1000.0 / in_hours(t));
}

/// Energy at a price is money.
constexpr Money operator*(Energy e, UnitPrice p) {
  return money(in_kilowatt_hours(e) * in_currency_per_kilowatt_hour(p));
}
constexpr Money operator*(UnitPrice p, Energy e) { return e * p; }

}  // namespace wattweek::units
