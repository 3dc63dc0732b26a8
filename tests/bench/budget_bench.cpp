// Budgets from one zero on random connected prints with 1.2 readings a feature and unequal
// tolerances: from the tolerance network to target and ± of every feature. Should take no more
// than 10 ms for 200 features and 300 ms for 2 000.
//
// GLPK is given the first level only, the tightest budget as wide as possible: one program with a
// target for every feature and one room for all.

#include <benchmark/benchmark.h>
#include <glpk.h>

#include <random>
#include <string>
#include <vector>

#include "core/tolerance/budget.h"

namespace {

using inchwright::Length;
using inchwright::TolerancedLink;

struct BudgetPrint {
  inchwright::Part part;
  inchwright::ToleranceNetwork network;
  inchwright::BudgetRequest request;
};

std::string nameOfHole(std::uint32_t number) {
  return "H" + std::to_string(100'000 + number);
}

// A tree like a print's, where every feature is dimensioned from one of the last eight or, one
// time in four, from an early one; tolerances of 1 to 20 thousandths either way.
BudgetPrint budgetPrint(std::uint32_t features) {
  std::mt19937_64 random(20'261'125);
  const auto below = [&](std::uint64_t bound) {
    return static_cast<std::uint32_t>(random() % bound);
  };
  BudgetPrint print;
  std::vector<std::int64_t> at(features);
  for (std::uint32_t i = 0; i < features; ++i) {
    at[i] = i == 0 ? 0 : std::int64_t{below(25'600)} * 9'921'875;
    inchwright::Feature hole;
    hole.id = nameOfHole(i);
    print.part.features.push_back(hole);
    print.request.places.push_back({hole.id, inchwright::Rational(at[i]), i == 0});
  }
  const auto join = [&](std::uint32_t a, std::uint32_t b) {
    inchwright::Reading reading;
    reading.id = "r" + std::to_string(print.part.readings.size() + 1);
    reading.from = nameOfHole(a);
    reading.to = nameOfHole(b);
    reading.figure.value = Length::ticks(at[b] - at[a]);
    reading.figure.tolerance =
        inchwright::Tolerance{Length::ticks((1 + std::int64_t{below(20)}) * 2'540'000),
                              Length::ticks(-(1 + std::int64_t{below(20)}) * 2'540'000)};
    print.part.readings.push_back(reading);
  };
  for (std::uint32_t i = 1; i < features; ++i) {
    const std::uint32_t back = std::min<std::uint32_t>(i, 8);
    join(below(4) == 0 ? below(back) : i - 1 - below(back), i);
    if (below(5) == 0) join(i - 1 - below(std::min<std::uint32_t>(i, 16)), i);
  }
  print.network = *inchwright::toleranceNetworkOf(print.part, inchwright::Axis::x);
  return print;
}

void ourBudget(benchmark::State& state, const BudgetPrint& print) {
  for (auto _ : state) {
    const auto budget = inchwright::budgetOf(print.part, print.network, print.request);
    if (!budget || !budget->notGuaranteed.empty()) state.SkipWithError("is not shared out");
    benchmark::DoNotOptimize(budget);
  }
}

void glpkFirstLevel(benchmark::State& state, const BudgetPrint& print) {
  const auto count = static_cast<int>(print.network.places.size());
  const int room = count + 1;
  glp_term_out(GLP_OFF);
  for (auto _ : state) {
    glp_prob* program = glp_create_prob();
    glp_set_obj_dir(program, GLP_MAX);
    glp_add_cols(program, room);
    for (int i = 1; i <= count; ++i) glp_set_col_bnds(program, i, GLP_FR, 0, 0);
    glp_set_col_bnds(program, room, GLP_LO, 0, 0);
    glp_set_obj_coef(program, room, 1);
    glp_add_rows(program, 2 * static_cast<int>(print.network.links.size()));
    int row = 0;
    for (const TolerancedLink& link : print.network.links) {
      const auto from = static_cast<int>(link.from) + 1;
      const auto to = static_cast<int>(link.to) + 1;
      const double ends = (from == 1 ? 0 : 1) + (to == 1 ? 0 : 1);
      const int columns[] = {0, from, to, room};
      const double most[] = {0, -1, 1, ends};
      const double least[] = {0, -1, 1, -ends};
      glp_set_row_bnds(program, ++row, GLP_UP, 0, static_cast<double>(link.high));
      glp_set_mat_row(program, row, 3, columns, most);
      glp_set_row_bnds(program, ++row, GLP_LO, static_cast<double>(link.low), 0);
      glp_set_mat_row(program, row, 3, columns, least);
    }
    if (glp_simplex(program, nullptr) != 0 || glp_get_status(program) != GLP_OPT) {
      state.SkipWithError("is not solved");
    }
    double widest = glp_get_obj_val(program);
    benchmark::DoNotOptimize(widest);
    glp_delete_prob(program);
  }
}

const bool kRegistered = [] {
  for (const std::uint32_t features : {200u, 2'000u}) {
    const auto add = [&](const std::string& who, auto run) {
      const std::string name = who + "/features_" + std::to_string(features);
      benchmark::RegisterBenchmark(name.c_str(), [features, run](benchmark::State& state) {
        run(state, budgetPrint(features));
      })->Unit(benchmark::kMillisecond);
    };
    add("ours", ourBudget);
    if (features == 200) add("glpk_first_level", glpkFirstLevel);
  }
  return true;
}();

}  // namespace
