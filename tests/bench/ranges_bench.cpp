// Ranges from one zero, both ends, on random connected prints with 1.2 readings a feature and
// unequal tolerances: from the list of edges to the greatest and least position of every feature
// and the edge that sets each. Everyone is given the same positions that satisfy all edges, and
// builds what it searches.
//
// Two orders: `near` has features numbered along the chain, `shuffled` at random. GLPK is given
// one end of one pair only, at the smallest size.
//
// A print is asked for its ranges once, so different prints come in turn: over the same small one a
// processor learns every branch by heart within a few rounds, and what is measured then is what
// nobody waits for. Memory that is given back stays with the program, or else the size of the
// pieces that a search asks for would decide which of them pay for new pages each time.

#include <benchmark/benchmark.h>
#include <glpk.h>
#include <malloc.h>

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include "core/graph/difference_graph.h"

namespace {

using inchwright::DifferenceEdge;

struct LimitedPrint {
  std::uint32_t features = 0;
  std::vector<DifferenceEdge> edges;
  std::vector<std::int64_t> positions;  ///< satisfy every edge
};

LimitedPrint limitedPrint(std::uint32_t features, bool shuffled, std::uint32_t which) {
  std::mt19937_64 random(20'261'125 + which);
  const auto below = [&](std::uint64_t bound) {
    return static_cast<std::uint32_t>(random() % bound);
  };
  std::vector<std::uint32_t> number(features);
  std::iota(number.begin(), number.end(), 0u);
  if (shuffled) std::shuffle(number.begin(), number.end(), random);
  LimitedPrint print{features, {}, std::vector<std::int64_t>(features)};
  for (auto& one : print.positions) one = std::int64_t{below(25'600)} * 9'921'875;
  const auto join = [&](std::uint32_t a, std::uint32_t b) {
    if (below(2) == 0) std::swap(a, b);
    const std::int64_t length = print.positions[number[b]] - print.positions[number[a]];
    print.edges.push_back({number[a], number[b], length - std::int64_t{below(20)} * 1'270'000,
                           length + std::int64_t{below(20)} * 1'270'000});
  };
  for (std::uint32_t i = 1; i < features; ++i) {
    join(i - 1 - below(std::min<std::uint32_t>(i, 8)), i);
    if (below(5) == 0) join(i - 1 - below(std::min<std::uint32_t>(i, 16)), i);
  }
  return print;
}

/// As many as have more turnings together than a processor remembers.
using Prints = std::vector<LimitedPrint>;

Prints printsInTurn(std::uint32_t features, bool shuffled) {
  constexpr std::uint32_t kFeaturesInAll = 16'000;
  Prints prints;
  for (std::uint32_t done = 0; done < kFeaturesInAll; done += features) {
    prints.push_back(limitedPrint(features, shuffled, static_cast<std::uint32_t>(prints.size())));
  }
  return prints;
}

void ourRanges(benchmark::State& state, const Prints& prints) {
  std::size_t turn = 0;
  for (auto _ : state) {
    const LimitedPrint& print = prints[turn++ % prints.size()];
    const inchwright::DifferenceGraph graph(print.features, print.edges);
    const inchwright::Reach reach = graph.from(0, print.positions);
    benchmark::DoNotOptimize(reach.data());
  }
}

// Costs are those of the edges with positions taken off, so that none is below zero.
void boostDijkstra(benchmark::State& state, const Prints& prints) {
  struct Costs {
    std::int64_t up;
    std::int64_t down;
  };
  using Graph = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, Costs,
                                                   boost::no_property, std::uint32_t>;
  std::size_t turn = 0;
  for (auto _ : state) {
    const LimitedPrint& print = prints[turn++ % prints.size()];
    const std::vector<std::int64_t>& at = print.positions;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> ends;
    std::vector<Costs> costs;
    ends.reserve(print.edges.size() * 2);
    costs.reserve(print.edges.size() * 2);
    for (const DifferenceEdge& edge : print.edges) {
      const std::int64_t length = at[edge.b] - at[edge.a];
      ends.push_back({edge.a, edge.b});
      costs.push_back({edge.high - length, length - edge.low});
      ends.push_back({edge.b, edge.a});
      costs.push_back({length - edge.low, edge.high - length});
    }
    const Graph graph(boost::edges_are_unsorted_multi_pass, ends.begin(), ends.end(), costs.begin(),
                      print.features);
    std::vector<std::int64_t> high(print.features), low(print.features);
    std::vector<std::uint32_t> highBy(print.features), lowBy(print.features);
    const auto byVertex = [&](auto& values) {
      return boost::make_iterator_property_map(values.begin(),
                                               boost::get(boost::vertex_index, graph));
    };
    boost::dijkstra_shortest_paths(graph, 0u,
                                   boost::predecessor_map(byVertex(highBy))
                                       .distance_map(byVertex(high))
                                       .weight_map(boost::get(&Costs::up, graph)));
    boost::dijkstra_shortest_paths(graph, 0u,
                                   boost::predecessor_map(byVertex(lowBy))
                                       .distance_map(byVertex(low))
                                       .weight_map(boost::get(&Costs::down, graph)));
    for (std::uint32_t i = 0; i < print.features; ++i) {
      high[i] = at[i] - at[0] + high[i];
      low[i] = at[i] - at[0] - low[i];
    }
    benchmark::DoNotOptimize(high.data());
    benchmark::DoNotOptimize(low.data());
  }
}

// The greatest position of the last feature less that of the first, as a linear program.
void glpkOnePair(benchmark::State& state, const Prints& prints) {
  glp_term_out(GLP_OFF);
  std::size_t turn = 0;
  for (auto _ : state) {
    const LimitedPrint& print = prints[turn++ % prints.size()];
    const auto count = static_cast<int>(print.features);
    glp_prob* program = glp_create_prob();
    glp_set_obj_dir(program, GLP_MAX);
    glp_add_cols(program, count);
    for (int i = 1; i <= count; ++i) glp_set_col_bnds(program, i, i == 1 ? GLP_FX : GLP_FR, 0, 0);
    glp_set_obj_coef(program, count, 1);
    glp_add_rows(program, static_cast<int>(print.edges.size()));
    int row = 0;
    for (const DifferenceEdge& edge : print.edges) {
      const int columns[] = {0, static_cast<int>(edge.a) + 1, static_cast<int>(edge.b) + 1};
      const double factors[] = {0, -1, 1};
      glp_set_row_bnds(program, ++row, edge.low == edge.high ? GLP_FX : GLP_DB,
                       static_cast<double>(edge.low), static_cast<double>(edge.high));
      glp_set_mat_row(program, row, 2, columns, factors);
    }
    if (glp_simplex(program, nullptr) != 0 || glp_get_status(program) != GLP_OPT) {
      state.SkipWithError("is not solved");
    }
    double greatest = glp_get_obj_val(program);
    benchmark::DoNotOptimize(greatest);
    glp_delete_prob(program);
  }
}

template <class Run>
void addRanges(const std::string& who, const std::string& what, std::uint32_t features,
               bool shuffled, Run run) {
  const std::string name = who + "/" + what + "_" + std::to_string(features);
  benchmark::RegisterBenchmark(name.c_str(), [features, shuffled, run](benchmark::State& state) {
    run(state, printsInTurn(features, shuffled));
  })->Unit(benchmark::kMicrosecond);
}

const bool kRegistered = [] {
  constexpr int kMostInOnePiece = 32 << 20;  // more is not taken
  mallopt(M_MMAP_THRESHOLD, kMostInOnePiece);
  mallopt(M_TRIM_THRESHOLD, 1 << 30);
  for (const std::uint32_t features : {1'000u, 10'000u, 100'000u}) {
    for (const bool shuffled : {false, true}) {
      const std::string what = shuffled ? "shuffled" : "near";
      addRanges("ours", what, features, shuffled, ourRanges);
      addRanges("boost_dijkstra", what, features, shuffled, boostDijkstra);
      if (features == 1'000) addRanges("glpk_one_pair", what, features, shuffled, glpkOnePair);
    }
  }
  return true;
}();

}  // namespace
