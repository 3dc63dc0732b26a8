#include "core/chain/tree_paths.h"

#include <gtest/gtest.h>

namespace inchwright {
namespace {

// A tree with a fork, one link of it against its walk: 0 → 1, 2 → 1, 1 → 3; and a pair 4 → 5.
AxisNetwork forked() {
  AxisNetwork network;
  network.places = {"A", "B", "C", "D", "E", "F"};
  const std::pair<std::uint32_t, std::uint32_t> ends[] = {{0, 1}, {2, 1}, {1, 3}, {4, 5}};
  for (const auto& [from, to] : ends) {
    AxisLink link;
    link.from = from;
    link.to = to;
    network.links.push_back(link);
  }
  return network;
}

Forest forestOf(const AxisNetwork& network) {
  std::vector<Link> links;
  for (const AxisLink& link : network.links) links.push_back({link.from, link.to, link.ticks});
  return Forest::of(6, links).value();
}

TEST(TreePaths, ALinkGetsAllThatPassesOverIt) {
  const AxisNetwork network = forked();
  const Forest forest = forestOf(network);
  const auto links = pathsOf(forest, network, {}, {{2, Rational(3)}, {3, Rational(5)}});
  ASSERT_TRUE(links.has_value());
  EXPECT_EQ(*links, (Sparse{{0, Rational(8)}, {1, Rational(-3)}, {2, Rational(5)}}));
}

TEST(TreePaths, WhatCancelsIsNotTold) {
  const AxisNetwork network = forked();
  const Forest forest = forestOf(network);
  const auto links = pathsOf(forest, network, {}, {{2, Rational(1)}, {3, Rational(-1)}});
  EXPECT_EQ(*links, (Sparse{{1, Rational(-1)}, {2, Rational(-1)}}));
  EXPECT_TRUE(pathsOf(forest, network, {}, {{0, Rational(7)}, {4, Rational(1)}})->empty());
}

TEST(TreePaths, RelationsCountWithTheirFactorsAndTerms) {
  AxisNetwork network = forked();
  AxisRelation middle;
  middle.terms = {{3, 2}, {0, -1}, {5, -1}};
  network.relations = {middle, middle};
  const Forest forest = forestOf(network);
  const auto half = Rational::of(1, 2).value();
  const auto links = pathsOf(forest, network, {{1, half}});
  EXPECT_EQ(*links, (Sparse{{0, Rational(1)}, {2, Rational(1)}, {3, half.negated()}}));
}

}  // namespace
}  // namespace inchwright
