#include "core/plan/why.h"

#include "core/tolerance/tolerance_network.h"

namespace inchwright {
namespace {

const Error kSumTooLarge{ErrorCode::outOfRange, "the sum is larger than can be held"};

/// A walk from zero to a place, adding up as the readout counts.
class Walk {
 public:
  Walk(const Part& part, int counts) : part_(part), counts_(counts) {}

  bool add(WhyStep step, const std::optional<Rational>& along) {
    const auto adds = along ? along->times(Rational(counts_)) : std::nullopt;
    const auto next = adds ? running_.plus(*adds) : std::nullopt;
    if (!next) return false;
    running_ = *next;
    step.adds = *adds;
    step.running = running_;
    steps_.push_back(std::move(step));
    return true;
  }

  /// The print's own way between two places; false where no readings join them, or beyond range.
  bool addChain(Axis axis, const Id& from, std::string_view to) {
    const Result<ToleranceNetwork> network = toleranceNetworkOf(part_, axis);
    if (!network) return false;
    const auto members = chainBetween(part_, *network, from, to);
    if (!members) return false;
    for (const StackMember& member : *members) {
      const bool reading = member.reading() != nullptr;
      const bool whole = member.factor == Rational(1) || member.factor == Rational(-1);
      const WhyStep::Source source = reading && whole ? WhyStep::Source::reading
                                     : whole          ? WhyStep::Source::shape
                                                      : WhyStep::Source::understood;
      if (!add({source, member, {}, {}}, Rational(member.nominal).times(member.factor))) {
        return false;
      }
    }
    return true;
  }

  const Rational& running() const { return running_; }
  std::vector<WhyStep> take() { return std::move(steps_); }
  void restart() {
    steps_.clear();
    running_ = Rational();
  }

 private:
  const Part& part_;
  int counts_;
  Rational running_;
  std::vector<WhyStep> steps_;
};

StackMember stepBetween(const Id& from, const Id& to) {
  StackMember step;
  step.from = from;
  step.to = to;
  return step;
}

/// Where the walk begins: the place zero is on, or the first of the two it lies between.
Id baseOf(const ZeroAlong& zero) {
  return zero.middle.size() == 2 ? zero.middle[0] : zero.at;
}

}  // namespace

Result<Why> whyOf(const WorkAt& work, std::string_view place, Axis axis) {
  const std::string name(place);
  if (!featureOfPlace(work.part, place)) {
    return Error{ErrorCode::notFound,
                 "the part `" + work.part.name + "` has no place `" + name + "`", name};
  }
  const TableAxis* along = work.along(axis);
  if (!along || !along->zero) {
    return Error{ErrorCode::badRequest,
                 "no coordinate runs along " + std::string(nameOf(axis)) + " in this setup", name};
  }
  const Position* at = work.position(place, axis);
  if (!at) {
    return Error{ErrorCode::unsolvable,
                 "nothing fixes `" + name + "` along " + std::string(nameOf(axis)) + " yet", name};
  }
  const Result<Coordinate> value = work.coordinate(*along, *at);
  if (!value) return value.error();
  Why why;
  why.axis = axis;
  why.value = *value;
  why.disputed = at->disputed;
  Walk walk(work.part, along->part.sign * along->counts);
  const Id base = baseOf(along->zero->asked);
  const Position* from = work.position(base, axis);
  const auto lead = from ? from->ticks.minus(along->zero->ticks) : std::nullopt;
  if (lead && !lead->isZero() &&
      !walk.add({WhyStep::Source::zero, stepBetween({}, base), {}, {}}, lead)) {
    return kSumTooLarge;
  }
  const bool joined = from && (base == place || walk.addChain(axis, base, place));
  const auto whole = at->ticks.minus(along->zero->ticks);
  const auto wanted =
      whole ? whole->times(Rational(along->part.sign * along->counts)) : std::nullopt;
  if (!wanted) return kSumTooLarge;
  // What no chain of readings makes was placed by other means.
  if (!joined || (walk.running() != *wanted && !at->disputed)) {
    walk.restart();
    if (!walk.add({WhyStep::Source::placed, stepBetween(base, name), {}, {}}, whole)) {
      return kSumTooLarge;
    }
  }
  why.steps = walk.take();
  return why;
}

}  // namespace inchwright
