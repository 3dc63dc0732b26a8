#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/job.h"

namespace inchwright::test {

/// A part from short lines, for tests. A line that can't be understood fails the test.
///
///     edge L x left            edge W x
///     hole A 1/4               hole B 3/16 front        point P left
///     slot S x 1/4 1 1/2       (width, then length to the end of the line; `@ face` may follow)
///     row D x 4 9/16           row D x 4 -              (`-`: no pitch; `@ face` may follow)
///     ring E 6 2.5 30          ring E 6 2.5 30 clockwise   (holes, PCD, first angle; `@ face`)
///     round Q 3/8 about A      round Q 3/8 about A right   round Q 1/4 corner L F
///     line M                   arc N
///     r1 x L A 1 3/8           r2 centres A C 5/8   r3 angle A C 55   r4 diameter A 1/4
///     again r1 1 5/8
///     midway y A F K           in_line y A B C          equal x A B C
///     symmetric x A B about C  concentric A B           tangent A B
///     traced A 0.41 0.77       accepted loose:C:y
///
/// `assumed` at the end of an understanding makes it one the print does not state.
class PartText {
 public:
  static Part read(const std::string& text) {
    PartText reader;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) reader.take(line);
    return reader.part_;
  }

 private:
  void take(const std::string& line) {
    std::istringstream stream(line);
    words_.clear();
    for (std::string word; stream >> word;) words_.push_back(word);
    line_ = line;
    if (words_.empty()) return;
    if (featureKindNamed(words_[0])) return addFeature();
    if (understandingKindNamed(words_[0])) return addUnderstanding();
    if (words_[0] == "traced") {
      const auto found = std::find_if(part_.features.begin(), part_.features.end(),
                                      [&](const Feature& one) { return one.id == word(1); });
      if (found == part_.features.end()) return fail();
      found->traced.assign(words_.begin() + 2, words_.end());
    } else if (words_[0] == "accepted") {
      part_.accepted.push_back({word(1)});
    } else if (words_[0] == "again") {
      for (Reading& reading : part_.readings) {
        if (reading.id == word(1)) reading.again = rest(2);
      }
    } else {
      addReading();
    }
  }

  void fail() const { ADD_FAILURE() << "not a line of a part: " << line_; }

  std::string word(std::size_t i) const {
    if (i < words_.size()) return words_[i];
    fail();
    return "";
  }

  std::string rest(std::size_t from) const {
    std::string text;
    for (std::size_t i = from; i < words_.size(); ++i) text += (i > from ? " " : "") + words_[i];
    return text;
  }

  Lettered figure(const std::string& text) const {
    const auto read = readLength(text);
    if (read) return *read;
    ADD_FAILURE() << line_ << ": " << read.error().text;
    return {};
  }

  std::optional<Lettered> figureUnlessDash(const std::string& text) const {
    if (text == "-") return std::nullopt;
    return figure(text);
  }

  std::optional<LetteredAngle> angle(const std::string& text) const {
    if (text == "-") return std::nullopt;
    const auto read = readAngle(text);
    if (read) return *read;
    ADD_FAILURE() << line_ << ": " << read.error().text;
    return std::nullopt;
  }

  Axis axis(std::size_t i) const {
    const auto named = axisNamed(word(i));
    if (!named) fail();
    return named.value_or(Axis::x);
  }

  // Takes `@ face` off the end.
  Face faceAtEnd() {
    if (words_.size() < 2 || words_[words_.size() - 2] != "@") return Face::top;
    const auto face = faceNamed(words_.back());
    if (!face) fail();
    words_.resize(words_.size() - 2);
    return face.value_or(Face::top);
  }

  void addFeature() {
    Feature feature;
    feature.shape = emptyShape(*featureKindNamed(words_[0]));
    feature.id = word(1);
    feature.face = faceAtEnd();
    if (auto* edge = feature.as<kind::Edge>()) {
      edge->axis = axis(2);
      if (words_.size() > 3) edge->side = faceNamed(words_[3]);
    } else if (auto* hole = feature.as<kind::Hole>()) {
      hole->drilled.diameter = figure(word(2));
      if (words_.size() > 3) feature.face = faceNamed(words_[3]).value_or(Face::top);
    } else if (feature.is<kind::Point>()) {
      if (words_.size() > 2) feature.face = faceNamed(words_[2]).value_or(Face::top);
    } else if (auto* slot = feature.as<kind::Slot>()) {
      slot->axis = axis(2);
      slot->width = figure(word(3));
      slot->length = figure(rest(4));
    } else if (auto* row = feature.as<kind::Row>()) {
      row->axis = axis(2);
      row->holes = std::stoi(word(3));
      row->drilled.diameter = figure("1/8");
      row->pitch = figureUnlessDash(rest(4));
    } else if (auto* ring = feature.as<kind::Ring>()) {
      ring->holes = std::stoi(word(2));
      ring->drilled.diameter = figure("1/8");
      ring->pitchDiameter = figureUnlessDash(word(3));
      ring->firstAngle = angle(word(4));
      if (words_.size() > 5) ring->sense = Sense::clockwise;
    } else if (auto* round = feature.as<kind::Round>()) {
      round->radius = figure(word(2));
      if (word(3) == "about") {
        round->about = word(4);
        if (words_.size() > 5) round->side = faceNamed(words_[5]);
      } else {
        round->corner = {word(4), word(5)};
      }
    }
    part_.features.push_back(feature);
  }

  void addUnderstanding() {
    Understanding what;
    what.kind = *understandingKindNamed(words_[0]);
    what.stated = words_.back() != "assumed";
    if (!what.stated) words_.pop_back();
    std::size_t next = 1;
    if (axisNamed(word(1))) what.axis = axis(next++);
    if (what.kind == UnderstandingKind::midway) {
      what.of = {word(next)};
      what.between = {word(next + 1), word(next + 2)};
    } else {
      for (; next < words_.size() && words_[next] != "about"; ++next) {
        what.of.push_back(words_[next]);
      }
      if (next < words_.size()) what.about = word(next + 1);
    }
    part_.understood.push_back(what);
  }

  void addReading() {
    Reading reading;
    reading.id = words_[0];
    reading.from = word(2);
    std::size_t next = 3;
    if (axisNamed(word(1))) {
      reading.axis = axis(1);
      reading.to = word(next++);
    } else {
      const auto kind = readingKindNamed(word(1));
      if (!kind) return fail();
      reading.kind = *kind;
      if (*kind == ReadingKind::centres || *kind == ReadingKind::angle) reading.to = word(next++);
    }
    if (reading.kind == ReadingKind::angle) {
      reading.angle = angle(rest(next));
      reading.figure.text = rest(next);
    } else {
      reading.figure = figure(rest(next));
    }
    part_.readings.push_back(reading);
  }

  Part part_;
  std::string line_;
  std::vector<std::string> words_;
};

inline Part partFrom(const std::string& text) {
  return PartText::read(text);
}

}  // namespace inchwright::test
