// Against the certified values of NIST/ITL's Statistical Reference Datasets, linear least squares
// (strd/*.csv, each with its source), printed examples of non-negative least squares, and the
// conditions that every solution fulfils.

#include "wattweek/metering/least_squares.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "chance.hpp"

namespace wattweek::metering {
namespace {

using Eigen::Index;

struct Certified {
  Eigen::VectorXd coefficients;
  Eigen::VectorXd standard_deviations;
  double residual_sd = 0;
  Eigen::MatrixXd numbers;  // y first.
};

std::vector<double> numbers_of(std::string line) {
  std::replace(line.begin(), line.end(), ',', ' ');
  std::istringstream words(line);
  std::vector<double> numbers;
  for (double number = 0; words >> number;) numbers.push_back(number);
  return numbers;
}

Eigen::VectorXd vector_of(const std::vector<double>& numbers) {
  return Eigen::Map<const Eigen::VectorXd>(numbers.data(), static_cast<Index>(numbers.size()));
}

Certified certified(const std::string& set) {
  std::ifstream file(WATTWEEK_SOURCE_DIR "/tests/metering/strd/" + set + ".csv");
  REQUIRE(file);
  std::vector<double> coefficients;
  std::vector<double> deviations;
  std::vector<std::vector<double>> rows;
  Certified all;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    std::string hash, certified, name, sd;
    double value = 0;
    double deviation = 0;
    if (line[0] != '#') {
      if (line[0] != 'y') rows.push_back(numbers_of(line));
    } else if (words >> hash >> certified >> name >> value && certified == "certified") {
      if (name == "residual_sd:") all.residual_sd = value;
      if (name[0] != 'B' || !(words >> sd >> deviation)) continue;
      coefficients.push_back(value);
      deviations.push_back(deviation);
    }
  }
  all.coefficients = vector_of(coefficients);
  all.standard_deviations = vector_of(deviations);
  all.numbers.resize(static_cast<Index>(rows.size()), static_cast<Index>(rows[0].size()));
  for (Index i = 0; i < all.numbers.rows(); ++i) {
    all.numbers.row(i) = vector_of(rows[static_cast<std::size_t>(i)]).transpose();
  }
  return all;
}

// Powers of x from `first` on.
Eigen::MatrixXd powers(const Eigen::VectorXd& x, Index first, Index count) {
  Eigen::MatrixXd all(x.size(), count);
  for (Index j = 0; j < count; ++j) all.col(j) = x.array().pow(static_cast<double>(first + j));
  return all;
}

// NIST's measure: how many leading digits are right, of the worst coefficient. 15 are certified.
double digits(const Eigen::VectorXd& found, const Eigen::VectorXd& right) {
  double least = 15;
  for (Index i = 0; i < right.size(); ++i) {
    const double off = std::abs(found(i) - right(i)) / std::abs(right(i));
    if (off > 0) least = std::min(least, -std::log10(off));
  }
  return least;
}

struct Found {
  double coefficients = 0;  // Digits.
  double standard_deviations = 0;
};

Found digits_of(const Eigen::MatrixXd& columns, const Certified& set) {
  const Eigen::VectorXd y = set.numbers.col(0);
  const ScaledQr qr(columns);
  REQUIRE(qr.is_full_rank());
  const Eigen::VectorXd x = qr.solve(y);
  const double variance =
      (y - columns * x).squaredNorm() / static_cast<double>(columns.rows() - columns.cols());
  const Eigen::VectorXd deviations = (variance * qr.inverse_gram().diagonal()).cwiseSqrt();
  return {digits(x, set.coefficients),
          set.residual_sd > 0 ? digits(deviations, set.standard_deviations) : 0};
}

TEST_CASE(
    "least squares: the certified straight lines and polynomials come out in 8 to 14 digits") {
  struct Case {
    const char* set;
    Index first_power;
    Index count;
    double coefficients;
    double deviations;
  };
  // Digits that plain double precision reaches by a QR of columns of length 1, measured apart from
  // this program, less one.
  for (const Case& one : {Case{"Norris", 0, 2, 11.5, 11}, Case{"Pontius", 0, 3, 11, 11},
                          Case{"NoInt1", 1, 1, 13.7, 13}, Case{"NoInt2", 1, 1, 14, 13},
                          Case{"Wampler1", 0, 6, 8, 0}, Case{"Wampler2", 0, 6, 10, 0},
                          Case{"Wampler3", 0, 6, 8, 8}, Case{"Wampler4", 0, 6, 8, 8}}) {
    CAPTURE(one.set);
    const Certified set = certified(one.set);
    const Found found = digits_of(powers(set.numbers.col(1), one.first_power, one.count), set);
    CHECK(found.coefficients > one.coefficients);
    if (one.deviations > 0) CHECK(found.standard_deviations > one.deviations);
  }
}

TEST_CASE("least squares: Longley's certified coefficients come out in 10 digits") {
  const Certified set = certified("Longley");
  Eigen::MatrixXd columns = set.numbers;
  columns.col(0).setOnes();
  const Found found = digits_of(columns, set);
  CHECK(found.coefficients > 10.5);
  CHECK(found.standard_deviations > 10);
}

TEST_CASE(
    "least squares: the powers of Filip's x are refused as they are, and solved once centred") {
  const Certified set = certified("Filip");
  const Eigen::VectorXd x = set.numbers.col(1);
  CHECK_FALSE(ScaledQr(powers(x, 0, 11)).is_full_rank());
  // Heights do not depend on where x is counted from: those of the certified coefficients.
  const double middle = x.mean();
  const double width = (x.array() - middle).abs().maxCoeff();
  const Eigen::MatrixXd columns = powers((x.array() - middle) / width, 0, 11);
  const ScaledQr qr(columns);
  REQUIRE(qr.is_full_rank());
  const Eigen::VectorXd y = set.numbers.col(0);
  const double squares = (y - columns * qr.solve(y)).squaredNorm();
  CHECK(std::sqrt(squares / (82 - 11)) == doctest::Approx(set.residual_sd).epsilon(1e-9));
}

TEST_CASE("least squares: columns that are made of each other are named, others are not") {
  Eigen::MatrixXd columns(5, 5);
  columns << 1, 0, 3, 1, 2,  //
      1, 1, 1, 2, 4,         //
      1, 2, 4, 3, 6,         //
      1, 5, 1, 6, 12,        //
      1, 3, 5, 4, 8;
  const auto sets = ScaledQr(columns).dependent_sets();
  REQUIRE(sets.size() == 1);
  CHECK(sets[0] == std::vector<Index>{0, 1, 3, 4});  // 4 is twice 3; 3 is 0 + 1.
  CHECK(ScaledQr(columns.leftCols(3)).dependent_sets().empty());
}

TEST_CASE("least squares: two pairs of columns in step are two sets") {
  Eigen::MatrixXd columns(5, 5);
  columns << 1, 0, 3, 0, 6,  //
      1, 1, 1, 2, 2,         //
      1, 2, 4, 4, 8,         //
      1, 5, 1, 10, 2,        //
      1, 3, 5, 6, 10;
  const auto sets = ScaledQr(columns).dependent_sets();
  REQUIRE(sets.size() == 2);
  CHECK(sets[0] == std::vector<Index>{1, 3});
  CHECK(sets[1] == std::vector<Index>{2, 4});
}

TEST_CASE("non-negative least squares: printed examples") {
  Eigen::MatrixXd a(3, 2);
  a << 1, 0, 1, 0, 0, 1;
  // scipy 1.11, documentation of scipy.optimize.nnls.
  const Eigen::VectorXd x = non_negative_least_squares(a, Eigen::Vector3d(2, 1, 1));
  CHECK(x(0) == doctest::Approx(1.5).epsilon(1e-14));
  CHECK(x(1) == doctest::Approx(1).epsilon(1e-14));
  CHECK((a * x - Eigen::Vector3d(2, 1, 1)).norm() == doctest::Approx(0.7071067811865475));
  CHECK(non_negative_least_squares(a, Eigen::Vector3d(-1, -1, -1)) == Eigen::Vector2d(0, 0));

  // The example in the documentation of lsqnonneg; its digits recomputed in exact fractions.
  Eigen::MatrixXd c(4, 2);
  c << 0.0372, 0.2869, 0.6861, 0.7071, 0.6233, 0.6245, 0.6344, 0.6170;
  const Eigen::VectorXd d = Eigen::Vector4d(0.8587, 0.1781, 0.0747, 0.8405);
  const Eigen::VectorXd y = non_negative_least_squares(c, d);
  CHECK(y(0) == 0);
  CHECK(y(1) == doctest::Approx(0.692934397130293).epsilon(1e-13));
  CHECK((c * y - d).squaredNorm() == doctest::Approx(0.831455951263312).epsilon(1e-13));
  const Eigen::VectorXd free = ScaledQr(c).solve(d);
  CHECK(free(0) == doctest::Approx(-2.56274654).epsilon(1e-8));
  CHECK(free(1) == doctest::Approx(3.11077661).epsilon(1e-8));
}

TEST_CASE("non-negative least squares: a law of watts in which a disk would save watts") {
  Eigen::MatrixXd a(6, 3);
  a << 1, 0, 0, 1, 50, 0, 1, 100, 0, 1, 100, 2, 1, 0, 2, 1, 50, 1;
  Eigen::VectorXd watts(6);
  watts << 20, 31, 41, 40, 19, 30.5;
  const Eigen::VectorXd x = non_negative_least_squares(a, watts);
  // By hand: without the disk a straight line through the means 19.5, 30.75, 40.5.
  CHECK(x(0) == doctest::Approx(19.75).epsilon(1e-13));
  CHECK(x(1) == doctest::Approx(0.21).epsilon(1e-13));
  CHECK(x(2) == 0);
  CHECK((a * x - watts).norm() == doctest::Approx(1.369306394));
}

// Kuhn and Tucker's conditions, which make the solution the only one.
TEST_CASE("non-negative least squares: no column would help, none that is in use is uphill") {
  Chance chance(20);
  for (int run = 0; run < 300; ++run) {
    const Index rows = 2 + run % 29;
    const Index count = 1 + run % std::min<Index>(rows, 9);
    Eigen::MatrixXd a(rows, count);
    Eigen::VectorXd b(rows);
    for (Index i = 0; i < rows; ++i) {
      b(i) = 3 * chance.normal();
      for (Index j = 0; j < count; ++j) a(i, j) = chance.normal() + 0.3 * static_cast<double>(j);
    }
    const Eigen::VectorXd x = non_negative_least_squares(a, b);
    const Eigen::VectorXd descent = a.transpose() * (b - a * x);
    const double rounding = 1e-12 * b.norm() * a.norm();
    for (Index j = 0; j < count; ++j) {
      CAPTURE(run);
      CHECK(x(j) >= 0);
      CHECK(descent(j) <= rounding);
      CHECK(x(j) * std::abs(descent(j)) <= rounding * x.norm());
    }
  }
}

TEST_CASE("non-negative least squares: twins and columns of zeros end in one answer") {
  Eigen::MatrixXd a(4, 4);
  a << 1, 1, 0, 2, 1, 1, 0, 0, 1, 1, 0, 3, 1, 1, 0, 1;
  const Eigen::VectorXd b = Eigen::Vector4d(9, 5, 11, 7);
  const Eigen::VectorXd x = non_negative_least_squares(a, b);
  CHECK((a * x - b).norm() < 1e-12);
  CHECK(x(0) + x(1) == doctest::Approx(5));
  CHECK(x(2) == 0);
  CHECK(x(3) == doctest::Approx(2));
}

}  // namespace
}  // namespace wattweek::metering
