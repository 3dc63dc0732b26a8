#pragma once

#include <cmath>
#include <random>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/edit.h"
#include "core/part/job.h"

namespace inchwright {

/// Makes sound jobs at random, with every kind of feature, reading, understanding, zero and unknown
/// member, and every optional member there or not. The same seed gives the same jobs.
class RandomJob {
 public:
  explicit RandomJob(unsigned seed) : random_(seed) {}

  Job make() {
    Job job;
    job.title = words();
    job.print = words();
    job.unit = unit_ = coin() ? Unit::inch : Unit::millimetre;
    if (coin()) job.projection = coin() ? Projection::first : Projection::third;
    job.notes = words();
    job.jobExtra = extra();
    job.machine = machine();
    for (int i = below(3); i >= 0; --i) job.parts.push_back(part("part " + std::to_string(i)));
    for (int i = below(3); i > 0; --i) job.gaps.push_back(gap("gap " + std::to_string(i)));
    for (int i = below(3); i > 0; --i) job.pictures.push_back(picture(std::to_string(i)));
    for (Part& one : job.parts) {
      if (!job.pictures.empty() && coin()) one.views.push_back(view(job.pictures.front().name));
    }
    job.extra = extra();
    return job;
  }

 private:
  int below(int bound) { return static_cast<int>(random_() % static_cast<unsigned>(bound)); }
  bool coin() { return below(2) == 0; }

  template <class T>
  const T& oneOf(const std::vector<T>& from) {
    return from[static_cast<std::size_t>(below(static_cast<int>(from.size())))];
  }

  std::string words() {
    return oneOf<std::string>({"", "Clock plates", "say \"half\" \\ full",
                               "Übermaß ⅜ 時計 🕰", "two\nlines\tand \x01 control", "/ ~ 0",
                               "\x7f\xc2\x80"});
  }

  Extra extra() {
    Extra all;
    if (below(4) != 0) return all;
    const std::vector<std::string> values{"1.10",
                                          "1e400",
                                          "123456789012345678901234567890",
                                          "-0",
                                          "null",
                                          "true",
                                          "[]",
                                          "{}",
                                          "\"é\"",
                                          "[1, [2, {\"a\": -0.0E+5}]]",
                                          "{\"inner\": {\"x\": []}, \"kind\": \"edge\"}"};
    for (int i = below(3); i >= 0; --i) {
      all.emplace_back("later_" + std::to_string(i) + words(), oneOf(values));
    }
    return all;
  }

  Lettered figure() {
    const std::vector<std::string> texts{"3/8",   "1 3/16",  ".375",         "0.500 +.002 -.000",
                                         "2",     "12.7 mm", "1 1/2 ±0.005", "0.25",
                                         "15/64", "5 thou",  "3 x 9/16",     "13/16 / 3"};
    return *readLength(oneOf(texts), {unit_});
  }

  std::optional<Lettered> maybeFigure() { return coin() ? std::optional(figure()) : std::nullopt; }

  LetteredAngle angle() { return *readAngle(oneOf<std::string>({"55", "0", "22.5", "30 1/2"})); }

  std::string decimal() { return oneOf<std::string>({"0.41", "-1.5", "0", "12.345678", ".5"}); }

  GapMember gapMember() {
    GapMember member;
    if (coin()) member.name = words();
    member.sign = coin() ? 1 : -1;
    if (coin()) {
      member.part = "part 0";
      member.axis = Axis::z;
      member.from = "A";
      member.to = "nowhere";
    }
    member.length = maybeFigure();
    if (coin()) member.fit = "H7/g6";
    member.size = maybeFigure();
    member.hole = maybeFigure();
    member.shaft = maybeFigure();
    member.extra = extra();
    return member;
  }

  Gap gap(const std::string& name) {
    Gap gap;
    gap.name = name;
    gap.least = maybeFigure();
    gap.greatest = maybeFigure();
    for (int i = below(4); i > 0; --i) gap.members.push_back(gapMember());
    gap.extra = extra();
    return gap;
  }

  Machine machine() {
    Machine machine;
    machine.unit = coin() ? Unit::inch : Unit::millimetre;
    machine.step = oneOf<std::string>({"0.0005", "0.001", "0.005 mm"});
    machine.xCounts = coin() ? CountsX::right : CountsX::left;
    machine.yCounts = coin() ? CountsY::away : CountsY::towards;
    if (coin()) machine.finder = *readLength("0.200", {machine.unit});
    if (coin()) machine.accuracy = *readLength(".0005", {machine.unit});
    if (coin()) machine.finderError = *readLength("0", {machine.unit});
    machine.extra = extra();
    return machine;
  }

  Drilled drilled() {
    Drilled made;
    made.diameter = maybeFigure();
    made.make = static_cast<Make>(below(7));
    if (coin()) made.depth = {false, figure()};
    if (coin()) made.thread = "1/4-20 UNC";
    made.seatDiameter = maybeFigure();
    made.seatDepth = maybeFigure();
    made.locate = static_cast<Locate>(below(5));
    if (coin()) made.limits = coin() ? "H7" : "0.2490/0.2493";
    if (coin()) made.mate = PartPlace{words() + "p", "A", extra()};
    made.breaksOut = coin();
    return made;
  }

  Axis axisOnTop() { return coin() ? Axis::x : Axis::y; }

  std::size_t tracedBy(FeatureKind kind) {
    if (kind == FeatureKind::edge) return 1;
    if (kind == FeatureKind::line) return 4;
    return kind == FeatureKind::arc && coin() ? 3 : 2;
  }

  Shape shape(FeatureKind kind) {
    switch (kind) {
      case FeatureKind::edge: {
        kind::Edge edge{axisOnTop(), std::nullopt};
        if (coin()) edge.side = edge.axis == Axis::x ? Side::left : Side::back;
        return edge;
      }
      case FeatureKind::hole:
        return kind::Hole{drilled()};
      case FeatureKind::slot: {
        kind::Slot slot;
        slot.axis = axisOnTop();
        slot.width = maybeFigure();
        if (coin()) slot.depth = {false, figure()};
        return slot;
      }
      case FeatureKind::ring: {
        kind::Ring ring;
        ring.holes = 2 + below(12);
        ring.pitchDiameter = maybeFigure();
        if (coin()) ring.firstAngle = angle();
        ring.sense = coin() ? Sense::clockwise : Sense::anticlockwise;
        ring.drilled = drilled();
        return ring;
      }
      case FeatureKind::row: {
        kind::Row row{.axis = axisOnTop(), .holes = 2 + below(12), .countedBySpaces = coin()};
        row.pitch = maybeFigure();
        row.drilled = drilled();
        return row;
      }
      case FeatureKind::round: {
        kind::Round round;
        round.radius = maybeFigure();
        if (coin()) round.about = "A";
        if (coin()) round.side = Side::right;
        return round;
      }
      case FeatureKind::line:
        return kind::Line{coin() ? std::vector<Id>{"A", "B"} : std::vector<Id>{}};
      case FeatureKind::arc:
        return kind::Arc{maybeFigure(), coin() ? std::vector<Id>{"A", "B"} : std::vector<Id>{}};
      default:
        break;  // turned work stands in parts of its own
    }
    return kind::Point{};
  }

  /// Every feature but edges lies in the top face, so that any two of them can be joined.
  Feature feature(const Part& part, FeatureKind kind) {
    Feature feature;
    feature.shape = shape(kind);
    feature.id = nextFeatureId(part);
    if (coin()) feature.traced = std::vector<std::string>(tracedBy(kind), decimal());
    feature.note = words();
    feature.extra = extra();
    return feature;
  }

  /// Two places in the top face.
  std::pair<Id, Id> two(const Part& part) {
    std::vector<Id> ids;
    for (const Feature& one : part.features) {
      if (one.is<kind::Edge>()) continue;
      for (const Place& place : placesOf(one)) ids.push_back(place.id);
    }
    const Id first = oneOf(ids);
    while (true) {
      const Id second = oneOf(ids);
      if (second != first) return {first, second};
    }
  }

  Reading reading(const Part& part) {
    Reading reading;
    reading.id = nextReadingId(part);
    std::tie(reading.from, reading.to) = two(part);
    reading.kind = static_cast<ReadingKind>(below(3));
    if (reading.kind == ReadingKind::angle) {
      reading.angle = angle();
      reading.figure.text = reading.angle->text;
    } else {
      reading.figure = figure();
    }
    if (reading.kind == ReadingKind::along) reading.axis = coin() ? Axis::x : Axis::y;
    if (below(5) == 0) {
      reading.kind = ReadingKind::diameter;
      reading.axis = Axis::x;
      reading.angle.reset();
      reading.figure = figure();
      reading.from = "A";
      reading.to.clear();
    }
    if (reading.kind == ReadingKind::angle && coin()) {
      reading.against = {"A", "B"};
      if (coin()) reading.sense = coin() ? Sense::clockwise : Sense::anticlockwise;
    }
    reading.view = words();
    if (coin()) reading.offered = "G S";
    if (coin()) reading.place = {decimal(), decimal()};
    if (coin()) reading.again = "3/8";
    reading.extra = extra();
    return reading;
  }

  Understanding understanding() {
    Understanding it;
    it.kind = oneOf<UnderstandingKind>({UnderstandingKind::inLine, UnderstandingKind::midway,
                                        UnderstandingKind::symmetric, UnderstandingKind::equal,
                                        UnderstandingKind::concentric, UnderstandingKind::tangent,
                                        UnderstandingKind::wayRound});
    it.of = {"A", "B", "C"};
    if (it.kind == UnderstandingKind::wayRound) {
      it.sense = coin() ? Sense::clockwise : Sense::anticlockwise;
    }
    if (it.kind == UnderstandingKind::tangent) {
      it.of = {"A", "B"};
      if (coin()) it.touch = coin() ? Touch::inside : Touch::outside;
    }
    if (it.kind == UnderstandingKind::midway) {
      it.of = {"A"};
      it.between = {"B", "C"};
    }
    if (it.kind == UnderstandingKind::symmetric) {
      it.of = {"A", "B"};
      it.about = "C";
    }
    const bool along = it.kind != UnderstandingKind::concentric &&
                       it.kind != UnderstandingKind::wayRound &&
                       it.kind != UnderstandingKind::tangent;
    if (along) it.axis = coin() ? Axis::x : Axis::y;
    if (it.kind == UnderstandingKind::equal && coin()) {
      it.axis.reset();
      it.by = coin() ? EqualBy::spacing : EqualBy::radius;
    }
    it.stated = coin();
    it.extra = extra();
    return it;
  }

  inchwright::Setup setup(const std::string& name) {
    inchwright::Setup setup;
    setup.name = name;
    setup.face = coin() ? Face::top : Face::bottom;
    setup.turn = 90 * below(4);
    if (coin()) setup.zero.push_back({Axis::x, {"A", "B"}, "", coin(), maybeFigure(), extra()});
    if (coin()) setup.zero.push_back({Axis::y, {}, "C", false, maybeFigure(), extra()});
    for (auto& allowance : setup.stock) allowance = maybeFigure();
    if (coin()) setup.jaw = Side::front;
    if (coin()) setup.stop = Side::left;
    if (coin()) setup.checks = {"A", "B"};
    setup.zeroExtra = setup.zero.empty() ? Extra{} : extra();
    setup.stockExtra = extra();
    setup.extra = extra();
    return setup;
  }

  Picture picture(const std::string& name) {
    Picture picture;
    picture.name = name;
    if (coin()) {
      picture.file = "prints/plate é.png";
    } else {
      std::string bytes;
      for (int i = below(40); i >= 0; --i) bytes += static_cast<char>(below(256));
      picture.data = PictureBytes(bytes);
    }
    picture.page = 1 + below(3);
    picture.tone = {below(201) - 100, below(201) - 100, below(101)};
    for (int i = below(6); i > 0; --i) {
      const double pixel = std::ldexp(static_cast<double>(random_()), -below(60));
      picture.points.push_back({pixel, -below(4000) / 3.0, *readLength("3 7/8", {Unit::inch}),
                                *readLength("12.7 mm", {Unit::inch})});
    }
    picture.turn = 90 * below(4);
    picture.extra = extra();
    return picture;
  }

  PictureView view(const std::string& picture) {
    PictureView view;
    view.face = static_cast<Face>(below(6));
    view.picture = picture;
    view.turn = 90 * below(4);
    if (coin()) view.at = {decimal(), decimal()};
    view.extra = extra();
    return view;
  }

  General general() {
    General general;
    general.fractions = maybeFigure();
    general.twoPlaces = maybeFigure();
    general.threePlaces = maybeFigure();
    if (coin()) general.angles = angle();
    general.extra = extra();
    return general;
  }

  Part part(const std::string& name) {
    Part part;
    part.name = name;
    part.quantity = 1 + below(20);
    part.material = words();
    part.hand = oneOf<std::string>({"", "left", "right"});
    if (coin()) part.general = general();
    for (int i = 0; i < 3; ++i) part.features.push_back(feature(part, FeatureKind::hole));
    for (int i = below(12); i > 0; --i) {
      part.features.push_back(feature(part, static_cast<FeatureKind>(below(9))));
    }
    for (int i = below(12); i > 0; --i) part.readings.push_back(reading(part));
    for (int i = below(4); i > 0; --i) part.understood.push_back(understanding());
    for (int i = below(3); i > 0; --i) part.setups.push_back(setup(std::to_string(i)));
    if (coin()) part.accepted = {"loose:A:y", words()};
    if (coin()) {
      AcceptedDoubt doubt(words() + "k");
      doubt.about = words();
      doubt.reason = words();
      doubt.extra = extra();
      part.accepted.push_back(std::move(doubt));
    }
    part.extra = extra();
    return part;
  }

  std::mt19937 random_;
  Unit unit_ = Unit::inch;
};

}  // namespace inchwright
