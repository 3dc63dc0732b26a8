// The exact engine against its peers on random connected chains with 1.2 readings a feature, each
// from the list of readings to positions and the closure of every spare reading.
//
// Three orders: `near` has features numbered along the chain and readings listed along it,
// `shuffled` has the numbers drawn at random, `mixed` the numbers and the list.
// `copy` is a plain copy of the same bytes in and out: the physical limit.

#include <benchmark/benchmark.h>

#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <boost/graph/breadth_first_search.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/rational.hpp>
#include <cstring>
#include <numeric>
#include <random>
#include <string>
#include <vector>

#include "core/graph/forest.h"

namespace {

using inchwright::Link;

enum class Order { near, shuffled, mixed };

struct Print {
  std::uint32_t features = 0;
  std::vector<Link> links;
};

Print randomPrint(std::uint32_t features, Order order) {
  std::mt19937_64 random(20'261'125);
  const auto below = [&](std::uint64_t bound) {
    return static_cast<std::uint32_t>(random() % bound);
  };
  std::vector<std::uint32_t> number(features);
  std::iota(number.begin(), number.end(), 0u);
  if (order != Order::near) std::shuffle(number.begin(), number.end(), random);
  std::vector<std::int64_t> at(features);
  for (auto& one : at) one = std::int64_t{below(25'600)} * 9'921'875;
  Print print{features, {}};
  const auto link = [&](std::uint32_t a, std::uint32_t b) {
    if (below(2) == 0) std::swap(a, b);
    print.links.push_back({number[a], number[b], at[b] - at[a]});
  };
  for (std::uint32_t i = 1; i < features; ++i) {
    link(i - 1 - below(std::min<std::uint32_t>(i, 8)), i);
    if (below(5) == 0) link(i - 1 - below(std::min<std::uint32_t>(i, 16)), i);
  }
  if (order == Order::mixed) std::shuffle(print.links.begin(), print.links.end(), random);
  return print;
}

void ours(benchmark::State& state, const Print& print) {
  for (auto _ : state) {
    auto forest = inchwright::Forest::of(print.features, print.links);
    bool closes = forest.ok();
    for (std::uint32_t i = 0; closes && i < print.links.size(); ++i) {
      closes = forest->missOf(i) == 0;
    }
    if (!closes) state.SkipWithError("does not close");
    benchmark::DoNotOptimize(forest);
  }
}

void plainCopy(benchmark::State& state, const Print& print) {
  std::vector<Link> links(print.links.size());
  const std::vector<std::int64_t> from(print.features);
  std::vector<std::int64_t> to(print.features);
  for (auto _ : state) {
    std::memcpy(links.data(), print.links.data(), links.size() * sizeof(Link));
    std::memcpy(to.data(), from.data(), to.size() * sizeof(std::int64_t));
    benchmark::DoNotOptimize(links.data());
    benchmark::DoNotOptimize(to.data());
    benchmark::ClobberMemory();
  }
}

// Breadth-first search over a compressed graph that holds every reading both ways; the search
// places features over tree edges and checks the others. Length is what positions are made of.
template <class Length>
void breadthFirst(benchmark::State& state, const Print& print) {
  struct Reading {
    Length length;
  };
  using Graph = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, Reading,
                                                   boost::no_property, std::uint32_t>;
  struct Placer : boost::default_bfs_visitor {
    std::vector<Length>* at;
    std::uint64_t* misses;
    void tree_edge(Graph::edge_descriptor edge, const Graph& graph) const {
      (*at)[target(edge, graph)] = (*at)[source(edge, graph)] + graph[edge].length;
    }
    void non_tree_edge(Graph::edge_descriptor edge, const Graph& graph) const {
      if ((*at)[source(edge, graph)] + graph[edge].length == (*at)[target(edge, graph)]) return;
      // Towards a feature that is seen but not yet placed there is nothing to check: in a
      // breadth-first search there is none, tree edges place at once.
      ++*misses;
    }
  };
  for (auto _ : state) {
    std::vector<std::pair<std::uint32_t, std::uint32_t>> ends;
    std::vector<Reading> lengths;
    ends.reserve(print.links.size() * 2);
    lengths.reserve(print.links.size() * 2);
    for (const Link& link : print.links) {
      ends.push_back({link.from, link.to});
      lengths.push_back({Length(link.ticks)});
      ends.push_back({link.to, link.from});
      lengths.push_back({Length(-link.ticks)});
    }
    const Graph graph(boost::edges_are_unsorted_multi_pass, ends.begin(), ends.end(),
                      lengths.begin(), print.features);
    std::vector<Length> at(print.features);
    std::uint64_t misses = 0;
    Placer placer;
    placer.at = &at;
    placer.misses = &misses;
    boost::breadth_first_search(graph, 0u, boost::visitor(placer));
    if (misses != 0) state.SkipWithError("does not close");
    benchmark::DoNotOptimize(at.data());
  }
}

// Least squares in double over the normal equations, then the residual of every reading.
void leastSquares(benchmark::State& state, const Print& print) {
  const auto unknowns = static_cast<Eigen::Index>(print.features) - 1;
  for (auto _ : state) {
    std::vector<Eigen::Triplet<double>> entries;
    Eigen::VectorXd right = Eigen::VectorXd::Zero(unknowns);
    for (const Link& link : print.links) {
      const auto from = static_cast<int>(link.from) - 1;
      const auto to = static_cast<int>(link.to) - 1;
      const auto ticks = static_cast<double>(link.ticks);
      if (from >= 0) entries.emplace_back(from, from, 1.0);
      if (to >= 0) entries.emplace_back(to, to, 1.0);
      if (from >= 0 && to >= 0) entries.emplace_back(std::max(from, to), std::min(from, to), -1.0);
      if (from >= 0) right[from] -= ticks;
      if (to >= 0) right[to] += ticks;
    }
    Eigen::SparseMatrix<double> normal(unknowns, unknowns);
    normal.setFromTriplets(entries.begin(), entries.end());
    const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> solver(normal);
    const Eigen::VectorXd at = solver.solve(right);
    double worst = 0;
    for (const Link& link : print.links) {
      const double from = link.from == 0 ? 0 : at[static_cast<Eigen::Index>(link.from) - 1];
      const double to = link.to == 0 ? 0 : at[static_cast<Eigen::Index>(link.to) - 1];
      worst = std::max(worst, std::abs(to - from - static_cast<double>(link.ticks)));
    }
    if (solver.info() != Eigen::Success) state.SkipWithError("does not factor");
    benchmark::DoNotOptimize(worst);
  }
}

template <class Run>
void add(const std::string& who, const std::string& what, std::uint32_t features, Order order,
         Run run) {
  const std::string name = who + "/" + what + "_" + std::to_string(features);
  benchmark::RegisterBenchmark(name.c_str(), [features, order, run](benchmark::State& state) {
    const Print print = randomPrint(features, order);
    run(state, print);
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(print.links.size()));
  })->Unit(benchmark::kMicrosecond);
}

const bool kRegistered = [] {
  const std::pair<Order, const char*> orders[] = {
      {Order::near, "near"}, {Order::shuffled, "shuffled"}, {Order::mixed, "mixed"}};
  for (const std::uint32_t features : {100u, 10'000u, 1'000'000u}) {
    for (const auto& [order, what] : orders) {
      add("ours", what, features, order, ours);
      add("copy", what, features, order, plainCopy);
      add("boost_graph", what, features, order, breadthFirst<std::int64_t>);
      add("boost_rational", what, features, order, breadthFirst<boost::rational<std::int64_t>>);
      // Past these sizes fill-in takes minutes and gigabytes.
      if (features <= 10'000 || order == Order::near) {
        add("eigen_ldlt", what, features, order, leastSquares);
      }
    }
  }
  return true;
}();

}  // namespace
