#include "core/turned/lathe_work.h"

#include <algorithm>
#include <set>

#include "core/part/name_table.h"
#include "core/shop/thread_work.h"
#include "core/turned/cuts.h"
#include "core/turned/lathe_formulas.h"
#include "core/turned/lathe_readout.h"

namespace inchwright {
namespace {

constexpr NameTable<12> kCutNames{"face",    "centre_drill", "rough",  "drill",
                                  "bore",    "knurl",        "finish", "groove",
                                  "chamfer", "thread",       "deburr", "part_off"};

/// The end that is worked at.
Side freeEnd(Side held) {
  return held == Side::left ? Side::right : Side::left;
}

const std::optional<Rational>& endOf(const TurnedShape& shape, Side side) {
  return side == Side::left ? shape.leftEnd : shape.rightEnd;
}

const Id& edgeOf(const TurnedShape& shape, Side side) {
  return side == Side::left ? shape.leftEdge : shape.rightEdge;
}

/// How far from the free end a place lies, towards the chuck.
std::optional<Rational> depthOf(const TurnedShape& shape, Side held, const Rational& x) {
  const std::optional<Rational>& end = endOf(shape, freeEnd(held));
  if (!end) return std::nullopt;
  return held == Side::left ? end->minus(x) : x.minus(*end);
}

const Rational& chuckEnd(const TurnedStretch& one, Side held) {
  return held == Side::left ? *one.left : *one.right;
}

/// From the free end, where the largest outside diameter ends: beyond it a tool can't see.
std::optional<Rational> largestEndsAt(const TurnedShape& shape, Side held) {
  std::optional<Rational> depth;
  std::optional<Length> largest;
  for (const TurnedStretch& one : shape.stretches) {
    if (one.inner || one.isGroove() || !one.left || !one.atLeft) continue;
    const Length dia = std::max(*one.atLeft, *one.atRight);
    const auto end = depthOf(shape, held, chuckEnd(one, held));
    if (!end || (largest && dia < *largest)) continue;
    if (!largest || dia > *largest || *end < *depth) depth = end;
    largest = dia;
  }
  return depth;
}

bool holdsOtherEndLater(const Part& part, const Setup& setup) {
  bool later = false;
  for (const Setup& other : part.setups) {
    if (later && other.chucked && other.chucked->held != setup.chucked->held) return true;
    later = later || other.name == setup.name;
  }
  return false;
}

/// How deep from the free end this setup reaches; empty: as deep as there is work.
std::optional<Rational> reachOf(const Part& part, const TurnedShape& shape, const Setup& setup) {
  const Chucked& chucked = *setup.chucked;
  if (chucked.standsOut) return chucked.standsOut->value.rational();
  if (holdsOtherEndLater(part, setup)) return largestEndsAt(shape, chucked.held);
  return std::nullopt;
}

std::set<Id> reached(const Part& part, const TurnedShape& shape, const Setup& setup) {
  const auto reach = reachOf(part, shape, setup);
  std::set<Id> ids;
  for (const TurnedStretch& one : shape.stretches) {
    if (!one.left) continue;
    const auto depth = depthOf(shape, setup.chucked->held, chuckEnd(one, setup.chucked->held));
    if (!reach || (depth && *depth <= *reach)) ids.insert(one.id);
  }
  return ids;
}

std::set<Id> cutBefore(const Part& part, const TurnedShape& shape, const Setup& setup) {
  std::set<Id> ids;
  for (const Setup& other : part.setups) {
    if (other.name == setup.name) break;
    if (other.chucked) ids.merge(reached(part, shape, other));
  }
  return ids;
}

/// The tool cuts off what stands out and its own width behind that.
Length intoTheJaws(const Chucked& chucked, Length whole) {
  if (!chucked.partOff || !chucked.standsOut) return {};
  const auto wanted = whole.plus(chucked.partOff->width.value);
  const auto by = wanted ? wanted->minus(chucked.standsOut->value) : std::nullopt;
  return by && by->ticks() > 0 ? *by : Length();
}

std::optional<ThreadCut> threadCutOf(const kind::Screwed& screwed, const LatheReadout& readout) {
  const Result<Thread> thread = threadNamed(screwed.thread);
  if (!thread) return std::nullopt;
  const auto depth = thread->pitch.times(screwDepthInPitches(thread->series));
  if (!depth) return std::nullopt;
  ThreadCut cut;
  cut.perInch = thread->perInch;
  cut.pitch = readout.figure(thread->pitch, true);
  cut.depth = readout.figure(*depth, true);
  cut.leftHand = screwed.hand == Hand::left;
  if (screwed.runout) cut.runout = screwed.runout->text;
  return cut;
}

/// How far the tailstock is set over for a taper that is too long for the top slide.
std::optional<LatheFigure> setOverOf(const TurnedStretch& one, const TurnedShape& shape,
                                     const LatheReadout& readout) {
  if (one.inner || !one.atLeft || !one.atRight || !shape.leftEnd || !shape.rightEnd) return {};
  const auto length = one.right->minus(*one.left);
  const auto whole = shape.rightEnd->minus(*shape.leftEnd);
  if (!length || !whole || *length <= kTopSlideReach.rational()) return std::nullopt;
  const auto over = tailstockSetOver(
      std::max(*one.atLeft, *one.atRight), std::min(*one.atLeft, *one.atRight),
      nearestTick(*length).value_or(Length()), nearestTick(*whole).value_or(Length()));
  return over ? std::optional(readout.figure(*over, one.exact)) : std::nullopt;
}

/// What its kind wants said beside its two figures.
void addDetails(LatheRow& row, const TurnedStretch& one, const Feature& feature,
                const TurnedShape& shape, const LatheReadout& readout) {
  if (const auto* screwed = feature.as<kind::Screwed>()) {
    row.thread = threadCutOf(*screwed, readout);
  }
  if (feature.is<kind::Groove>()) {
    if (const auto width = one.right->minus(*one.left))
      row.width = readout.figure(*width, one.exact);
  }
  if (const auto* knurl = feature.as<kind::Knurl>()) {
    row.knurl = knurl->pattern;
    if (knurl->pitch) row.knurl += (row.knurl.empty() ? "pitch " : ", pitch ") + knurl->pitch->text;
  }
  if (feature.is<kind::Taper>()) row.setOver = setOverOf(one, shape, readout);
}

LatheRow rowOf(const TurnedStretch& one, const TurnedShape& shape, const LatheReadout& readout) {
  LatheRow row;
  row.id = one.id;
  row.kind = one.kind;
  row.length = readout.carriage(chuckEnd(one, readout.held()), one.exact);
  const bool fromRight = readout.held() == Side::left;
  const Rational& begins = fromRight ? *one.right : *one.left;
  if (endOf(shape, freeEnd(readout.held())) != begins) {
    row.from = readout.carriage(begins, one.exact);
  }
  if (const TurnedStretch* other = shape.inFrontOf(one, fromRight)) row.behind = other->id;
  const auto& dia = readout.held() == Side::left ? one.atLeft : one.atRight;
  if (dia) row.dia = readout.cross(*dia, one.exact);
  if (one.includedDegrees) row.topSlide = *one.includedDegrees / 2;
  row.disputed = one.disputed;
  return row;
}

}  // namespace

void holdTo(LatheRow& row, const SizeLimits& limits, const Step& step, bool halved) {
  row.limits = limits;
  if (!row.dia) return;
  ReadingOptions options;
  options.bareUnit = step.unit;
  const Result<Lettered> shown = readLength(row.dia->text, options);
  const auto dia = shown ? shown->value.times(halved ? 2 : 1) : std::nullopt;
  row.roundsOut = dia && (*dia < limits.least || *dia > limits.greatest);
}

std::string_view nameOf(CutOp op) {
  return nameIn(kCutNames, op);
}

Lathe latheFor(const Job& job, const TableOptions& options) {
  Lathe lathe = job.lathe.value_or(Lathe{});
  if (options.unit && *options.unit != lathe.unit) {
    lathe.unit = *options.unit;
    lathe.step = *options.unit == Unit::inch ? Lathe{}.step : std::string(kLatheMillimetreStep);
  }
  if (options.step) lathe.step = *options.step;
  return lathe;
}

Result<LatheWork> latheWork(const Job& job, const Part& part, const Solution& solution,
                            const Setup& setup, const TableOptions& options) {
  if (!setup.chucked) {
    return Error{ErrorCode::badRequest, "setup `" + setup.name + "` is none of the lathe",
                 setup.name};
  }
  LatheWork work;
  work.part = part.name;
  work.setup = setup.name;
  work.held = setup.chucked->held;
  work.shape = turnedShape(part, solution);
  const Lathe lathe = latheFor(job, options);
  const Result<LatheReadout> readout =
      LatheReadout::of(lathe, {part, solution, setup, job.machine}, work.shape);
  if (!readout) return readout.error();
  work.step = readout->step();
  work.halved = lathe.crossCounts == CrossCounts::radius;
  work.carriageLetter = lathe.carriageLetter;
  work.crossLetter = lathe.crossLetter;
  work.zeroAt = readout->zeroAt();
  work.zeroAssumed = readout->zeroAssumed();
  const std::set<Id> here = reached(part, work.shape, setup);
  const std::set<Id> before = cutBefore(part, work.shape, setup);
  std::vector<const TurnedStretch*> toCut;
  for (const TurnedStretch& one : work.shape.stretches) {
    if (!one.left) {
      work.unplaced.push_back(one.id);
    } else if (here.count(one.id) == 0) {
      work.inTheChuck.push_back(one.id);
    } else {
      work.rows.push_back(rowOf(one, work.shape, *readout));
      const Feature* feature = part.feature(one.id);
      addDetails(work.rows.back(), one, *feature, work.shape, *readout);
      const auto& diameter = diameterOf(*feature);
      if (diameter && diameter->tolerance) {
        const auto limits = limitsOf(*diameter, diameter->tolerance);
        if (limits) holdTo(work.rows.back(), *limits, work.step, work.halved);
      }
      work.rows.back().cutHere = before.count(one.id) == 0;
      if (work.rows.back().cutHere) toCut.push_back(&one);
    }
  }
  if (work.shape.leftEnd && work.shape.rightEnd) {
    const auto whole = work.shape.rightEnd->minus(*work.shape.leftEnd);
    if (whole) work.whole = readout->figure(*whole, true);
  }
  if (work.whole) {
    const auto& out = setup.chucked->standsOut;
    work.partOffInJaws = intoTheJaws(*setup.chucked, work.whole->value);
    work.standsOutTooFar = out && !setup.chucked->partOff && out->value > work.whole->value;
  }
  work.zeroInChuck =
      !work.zeroAt.empty() &&
      work.zeroAt == (work.held == Side::left ? work.shape.leftEdge : work.shape.rightEdge);
  work.cuts = cutsOf(part, lathe, setup, work.shape, toCut, *readout,
                     edgeOf(work.shape, freeEnd(work.held)), edgeOf(work.shape, work.held));
  return work;
}

}  // namespace inchwright
