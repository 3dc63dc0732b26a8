#include "core/plan/why.h"

#include "core/plan/why_held.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {
namespace {

const Error kSumTooLarge{ErrorCode::outOfRange, "the sum is larger than can be held"};

StackMember stepBetween(const Id& from, const Id& to) {
  StackMember step;
  step.from = from;
  step.to = to;
  return step;
}

// Chains of held places longer than this are told from where they stand.
constexpr int kDeepest = 500;

/// A walk from zero to a place, adding up as the readout counts.
class Walk {
 public:
  Walk(const WorkAt& work, const TableAxis& along)
      : work_(work),
        axis_(along.part.axis),
        counts_(along.part.sign * along.counts),
        network_(toleranceNetworkOf(work.part, axis_)) {}

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

  /// Leads from one place to another; false where nothing tells how, or beyond range.
  bool lead(const Id& from, const Id& to, int deep = 0) {
    if (from == to) return true;
    const std::size_t before = steps_.size();
    const Rational begun = running_;
    if (addChain(from, to) && (arrives(begun, from, to) || isDisputed(to))) return true;
    back(before, begun);
    const Id held = heldOn(to);
    if (held.empty() || deep > kDeepest) return false;
    const HeldBy& by = work_.solution.beyond.held.at(held);
    const Id& end = by.from.empty() ? from : by.from.front();
    const bool led = lead(from, end, deep + 1) && addHeld(end, held) &&
                     (held == to || addChain(held, to)) &&
                     (arrives(begun, from, to) || isDisputed(to));
    if (!led) back(before, begun);
    return led;
  }

  void restart() { back(0, Rational()); }
  std::vector<WhyStep> take() { return std::move(steps_); }

 private:
  bool addChain(const Id& from, const Id& to) {
    if (!network_) return false;
    const auto members = chainBetween(work_.part, *network_, from, to);
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

  bool addHeld(const Id& from, const Id& held) {
    return add({WhyStep::Source::placed, stepBetween(from, held), {}, {}}, between(from, held));
  }

  /// The place itself, or one that it is chained to, that was solved for; empty where none was.
  Id heldOn(const Id& place) const {
    const auto& held = work_.solution.beyond.held;
    if (held.contains(place)) return place;
    if (!network_) return {};
    for (const auto& [id, by] : held) {
      if (between(id, place) && chainBetween(work_.part, *network_, id, place)) return id;
    }
    return {};
  }

  std::optional<Rational> between(const Id& from, const Id& to) const {
    return work_.solution.between(from, to, axis_);
  }
  bool isDisputed(const Id& place) const {
    const Position* at = work_.position(place, axis_);
    return at != nullptr && at->disputed;
  }
  bool arrives(const Rational& begun, const Id& from, const Id& to) const {
    const auto whole = between(from, to);
    const auto counted = whole ? whole->times(Rational(counts_)) : std::nullopt;
    return counted && running_.minus(begun) == counted;
  }
  void back(std::size_t steps, const Rational& running) {
    steps_.resize(steps);
    running_ = running;
  }

  const WorkAt& work_;
  Axis axis_;
  int counts_;
  Result<ToleranceNetwork> network_;
  Rational running_;
  std::vector<WhyStep> steps_;
};

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
  const auto whole = at->ticks.minus(along->zero->ticks);
  if (!whole || !whole->times(Rational(along->part.sign * along->counts))) return kSumTooLarge;
  const Id base = baseOf(along->zero->asked);
  const Position* from = work.position(base, axis);
  const auto lead = from ? from->ticks.minus(along->zero->ticks) : std::nullopt;
  Walk walk(work, *along);
  bool isLed = lead.has_value();
  if (isLed && !lead->isZero()) {
    isLed = walk.add({WhyStep::Source::zero, stepBetween({}, base), {}, {}}, lead);
  }
  if (!isLed || !walk.lead(base, name)) {
    walk.restart();
    if (!walk.add({WhyStep::Source::placed, stepBetween(base, name), {}, {}}, whole)) {
      return kSumTooLarge;
    }
  }
  why.steps = walk.take();
  for (WhyStep& step : why.steps) {
    if (step.source != WhyStep::Source::placed) continue;
    if (auto held = heldAt(work, step.member.to)) {
      step.held = why.held.size();
      why.held.push_back(*std::move(held));
    }
  }
  return why;
}

}  // namespace inchwright
