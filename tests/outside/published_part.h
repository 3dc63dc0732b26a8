#pragma once

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "core/chain/solution.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"
#include "core/part/job.h"

namespace inchwright {

/// A figure that the test itself letters; one that can't be read fails the test.
inline Lettered lettered(std::string_view text, Unit unit = Unit::inch) {
  ReadingOptions options;
  options.bareUnit = unit;
  auto read = readLength(text, options);
  if (!read) {
    ADD_FAILURE() << text << ": " << read.error().text;
    return {};
  }
  return *read;
}

/// The exact length that a text stands for.
inline Length length(std::string_view text) {
  return lettered(text).value;
}

/// Builds the part that a published figure shows, in the words of the figure.
class PublishedPart {
 public:
  PublishedPart() { part_.name = "Published"; }

  PublishedPart& edge(const Id& id, Axis axis, std::optional<Side> side = std::nullopt) {
    Feature feature;
    feature.id = id;
    feature.kind = FeatureKind::edge;
    feature.axis = axis;
    feature.side = side;
    part_.features.push_back(feature);
    return *this;
  }

  PublishedPart& hole(const Id& id, std::string_view diameter) {
    Feature feature;
    feature.id = id;
    feature.kind = FeatureKind::hole;
    feature.diameter = lettered(diameter);
    part_.features.push_back(feature);
    return *this;
  }

  PublishedPart& ring(const Id& id, int holes, std::string_view pcd, std::string_view firstAngle,
                      Sense sense) {
    Feature feature;
    feature.id = id;
    feature.kind = FeatureKind::ring;
    feature.holes = holes;
    feature.pitchDiameter = lettered(pcd);
    auto angle = readAngle(firstAngle);
    EXPECT_TRUE(angle.ok());
    if (angle) feature.firstAngle = *angle;
    feature.sense = sense;
    part_.features.push_back(feature);
    return *this;
  }

  PublishedPart& along(Axis axis, const Id& from, const Id& to, std::string_view text) {
    Reading reading;
    reading.id = "r" + std::to_string(part_.readings.size() + 1);
    reading.axis = axis;
    reading.from = from;
    reading.to = to;
    reading.figure = lettered(text);
    part_.readings.push_back(reading);
    return *this;
  }

  PublishedPart& midway(Axis axis, const Id& of, const Id& a, const Id& b) {
    Understanding understanding;
    understanding.kind = UnderstandingKind::midway;
    understanding.axis = axis;
    understanding.of = {of};
    understanding.between = {a, b};
    understanding.stated = true;
    part_.understood.push_back(understanding);
    return *this;
  }

  const Part& part() const { return part_; }

  /// Fails the test and returns an empty solution when the part can't be solved.
  Solution solved() const {
    const auto checked = checkPart(part_);
    if (!checked) {
      ADD_FAILURE() << checked.error().place << ": " << checked.error().text;
      return {};
    }
    auto solution = solve(part_);
    if (!solution) {
      ADD_FAILURE() << solution.error().text;
      return {};
    }
    return *std::move(solution);
  }

 private:
  Part part_;
};

/// The distance between two places as a length; fails the test where nothing fixes it.
inline Length distance(const Solution& solution, const Id& from, const Id& to, Axis axis) {
  const auto between = solution.between(from, to, axis);
  if (!between) {
    ADD_FAILURE() << "nothing fixes " << to << " against " << from;
    return {};
  }
  return nearestTick(*between).value_or(Length());
}

}  // namespace inchwright
