#include "core/plan/gap.h"

#include <algorithm>
#include <numeric>

#include "core/base/checked.h"
#include "core/making/drawn_size.h"
#include "core/measure/limits.h"
#include "core/plan/budget_from_zero.h"
#include "core/shop/clearance.h"
#include "core/tolerance/placed_stack.h"
#include "core/tolerance/tolerance_network.h"

namespace inchwright {
namespace {

Error gapFault(ErrorCode code, std::string text, std::string pointer) {
  return {code, std::move(text), std::move(pointer)};
}

Error gapTooFar(const std::string& pointer) {
  return gapFault(ErrorCode::outOfRange, "the gap adds up to more than can be held", pointer);
}

// A member says exactly one thing.
std::optional<Error> shapeFault(const GapMember& member, const std::string& pointer) {
  const bool places =
      member.axis || member.isStraight || !member.from.empty() || !member.to.empty();
  const bool screwed = !member.screw.empty();
  const bool byName = member.size || (!member.fit.empty() && !screwed);
  const bool measured = member.shaft || (member.hole && !screwed);
  const int things = places + member.length.has_value() + byName + measured + screwed;
  const auto lacks = [&](const char* key, const char* what) {
    return gapFault(ErrorCode::badRequest, what, pointer + key);
  };
  if (things != 1) {
    return lacks("",
                 "a member of a gap is one of: a distance (`part`, `axis`, `from`, `to`), a "
                 "`length`, a `fit` with its `size`, a `hole` and its `shaft`, a `screw` and the "
                 "`fit` of its hole");
  }
  if (places && member.part.empty()) return lacks("/part", "a distance says in which part");
  if (places && !member.axis && !member.isStraight)
    return lacks("/axis", "a distance says along which axis");
  if (places && member.from.empty()) return lacks("/from", "a distance says from where");
  if (places && member.to.empty()) return lacks("/to", "a distance says to where");
  if (byName && member.fit.empty()) return lacks("/fit", "a size needs its fit, such as `H7/g6`");
  if (byName && !member.size) return lacks("/size", "a fit needs the size it is for");
  if (measured && !member.hole) return lacks("/hole", "a shaft needs its hole");
  if (measured && !member.shaft) return lacks("/shaft", "a hole needs its shaft");
  if (screwed && member.fit.empty() == !member.hole) {
    return lacks("/screw",
                 "a screw needs either the `fit` of its hole, such as `close`, or the `hole`");
  }
  return std::nullopt;
}

// What is larger than its hole by more than any press fit has (common practice: 1/64 in) is in the
// wrong hole.
std::optional<Error> tooTight(Length clearance, const std::string& pointer) {
  if (clearance.ticks() > -Length::kTicksPerInch / 64) return std::nullopt;
  return gapFault(ErrorCode::badRequest,
                  "the shaft is larger than its hole by " +
                      writeDecimal(clearance.magnitude(), Unit::inch) + " in",
                  pointer);
}

// The document's own name for a member comes first.
MemberKind namedOr(const GapMember& member, MemberKind what) {
  return member.name.empty() ? std::move(what) : member::Named{member.name};
}

// A hole with its shaft as a member: half the clearance either way, and nothing when tight.
StackMember floatOf(const GapMember& member, MemberKind what, std::int64_t clearance) {
  StackMember stray;
  stray.what = namedOr(member, std::move(what));
  stray.factor = *Rational::of(member.sign, 2);
  stray.high = std::max<std::int64_t>(clearance, 0);
  stray.low = -stray.high;
  return stray;
}

// The same step of the same part, whichever way it is walked; pitches of a row share a label.
bool sameLink(const StackMember& a, const StackMember& b) {
  return a.what == b.what && std::minmax(a.from, a.to) == std::minmax(b.from, b.to);
}

/// Adds the members of one gap up, keeping what was worked out for each part along each axis.
class GapWalk {
 public:
  /// Distances go by the prints' chains, but in the parts of `made` from those zeros.
  GapWalk(const Job& job, const std::vector<MadePart>& made, std::optional<Length> held)
      : job_(job), made_(made), held_(held) {}
  /// By the prints' chains and sizes but for what was found.
  GapWalk(const Job& job, const FoundFigures& found) : job_(job), found_(&found) {}

  std::optional<Error> add(const GapMember& member, const std::string& pointer) {
    if (auto fault = shapeFault(member, pointer)) return fault;
    const Part* part = nullptr;
    if (!member.part.empty()) {
      part = job_.part(member.part);
      if (!part) {
        return gapFault(ErrorCode::notFound, "the job has no part `" + member.part + "`",
                        pointer + "/part");
      }
    }
    if (member.length) return addLength(member, part, pointer);
    if (!member.screw.empty()) return addScrew(member, pointer);
    if (!member.fit.empty()) return addFit(member, pointer);
    if (member.hole) return addMeasured(member, pointer);
    return addDistance(member, *part, pointer);
  }

  // Members without factor have cancelled.
  Result<Stack> stack(double inflation) {
    std::erase_if(members_, [](const StackMember& one) { return one.factor.isZero(); });
    Result<Stack> all = stackOf(std::move(members_), inflation, base_);
    if (all) all->secondOrder = secondOrder_;
    return all;
  }

 private:
  std::optional<Error> addLength(const GapMember& member, const Part* part,
                                 const std::string& pointer) {
    const auto tolerance = toleranceOf(*member.length, part ? part->general : General{});
    const auto limits = limitsOf(*member.length, tolerance);
    if (!limits) return gapTooFar(pointer + "/length");
    StackMember one;
    one.what = namedOr(member, member::Alone{});
    one.text = member.length->text;
    one.part = member.part;
    one.factor = member.sign;
    one.nominal = member.length->value.ticks();
    one.low = limits->least.ticks();
    one.high = limits->greatest.ticks();
    members_.push_back(std::move(one));
    return std::nullopt;
  }

  std::optional<Error> addFit(const GapMember& member, const std::string& pointer) {
    const Result<Fit> fit = fitByName(member.fit, member.size->value);
    if (!fit) return gapFault(fit.error().code, fit.error().text, pointer + "/fit");
    members_.push_back(floatOf(member, member::Fitted{fit->name, member.size->text},
                               fit->greatestClearance().ticks()));
    return std::nullopt;
  }

  // A screw goes in at its full outside diameter.
  std::optional<Error> addScrew(const GapMember& member, const std::string& pointer) {
    const Result<Thread> screw = threadNamed(member.screw);
    if (!screw) return gapFault(screw.error().code, screw.error().text, pointer + "/screw");
    if (!member.hole) {
      const Result<ClearanceHole> hole = clearanceHole(member.fit, member.screw);
      if (!hole) return gapFault(hole.error().code, hole.error().text, pointer + "/fit");
      members_.push_back(floatOf(member, member::Screwed{screw->name, hole->fit, hole->drill},
                                 hole->clearance().ticks()));
      return std::nullopt;
    }
    const Result<SizeLimits> hole = sizeOf(*member.hole, pointer + "/hole");
    if (!hole) return hole.error();
    const auto clearance = hole->greatest.minus(screw->major);
    if (!clearance) return gapTooFar(pointer + "/hole");
    members_.push_back(
        floatOf(member, member::ScrewedIn{screw->name, *member.hole}, clearance->ticks()));
    return std::nullopt;
  }

  std::optional<Error> addMeasured(const GapMember& member, const std::string& pointer) {
    for (const auto* side : {&member.hole, &member.shaft}) {
      const bool isHole = side == &member.hole;
      const std::optional<Error> fault = sideFault(job_, **side, isHole);
      if (fault) return gapFault(fault->code, fault->text, pointer + (isHole ? "/hole" : "/shaft"));
    }
    const Result<SizeLimits> hole = sizeOf(*member.hole, pointer + "/hole");
    if (!hole) return hole.error();
    const Result<SizeLimits> shaft = sizeOf(*member.shaft, pointer + "/shaft");
    if (!shaft) return shaft.error();
    const auto clearance = hole->greatest.minus(shaft->least);
    if (!clearance) return gapTooFar(pointer);
    if (auto fault = tooTight(*clearance, pointer + "/shaft")) return fault;
    members_.push_back(
        floatOf(member, member::Shafted{*member.hole, *member.shaft}, clearance->ticks()));
    return std::nullopt;
  }

  /// A size as it stands or as the print of its part wants it, unless it was found to be another.
  Result<SizeLimits> sizeOf(const SizeOrPlace& side, const std::string& pointer) const {
    if (const auto* text = std::get_if<Lettered>(&side)) {
      const auto limits = limitsOf(*text, text->tolerance);
      if (!limits) return gapTooFar(pointer);
      return *limits;
    }
    const PartPlace& at = std::get<PartPlace>(side);
    if (found_) {
      if (const auto measured = found_->size(at)) return *measured;
    }
    const Part* part = job_.part(at.part);
    if (!part) {
      return gapFault(ErrorCode::notFound, "the job has no part `" + at.part + "`",
                      pointer + "/part");
    }
    const Result<DrawnSize> drawn = drawnSize(*part, at.place);
    if (!drawn) return gapFault(drawn.error().code, drawn.error().text, pointer + "/place");
    return drawn->limits;
  }

  std::optional<StackMember> foundDistance(const GapMember& member, const Part& part) const {
    if (!member.axis) return std::nullopt;
    const auto span = found_->distance(part, *member.axis, member.from, member.to);
    if (!span) return std::nullopt;
    StackMember one;
    one.what = member::Found{};
    one.from = member.from;
    one.to = member.to;
    one.part = part.name;
    one.factor = member.sign;
    one.low = span->least.ticks();
    one.high = span->greatest.ticks();
    one.nominal = std::midpoint(one.low, one.high);
    return one;
  }

  /// The leading part's hole that a hole follows which is drilled together with it.
  static const PartPlace* leaderOf(const Part& part, const Id& place) {
    const Feature* const feature = featureOfPlace(part, place);
    const Drilled* const drilled = feature ? feature->drilled() : nullptr;
    const bool follows = drilled && drilled->locate == Locate::pair && drilled->mate;
    return follows && feature->id == place ? &*drilled->mate : nullptr;
  }

  /// A distance between two holes that were drilled once through both parts is that of the leading
  /// part, whose error they share; but for one that the two prints give otherwise.
  std::optional<GapMember> asLed(const GapMember& member, const Part& part) {
    const PartPlace* const from = leaderOf(part, member.from);
    const PartPlace* const to = leaderOf(part, member.to);
    if (!from || !to || from->part != to->part || from->part == part.name) return std::nullopt;
    const Part* const leader = job_.part(from->part);
    if (!leader || leaderOf(*leader, from->place) || leaderOf(*leader, to->place)) {
      return std::nullopt;
    }
    GapMember led = member;
    led.part = leader->name;
    led.from = from->place;
    led.to = to->place;
    const Result<Stack> own = alongThePrint(part, member), theirs = alongThePrint(*leader, led);
    if (!own || !theirs) return std::nullopt;
    if (own->nominal == theirs->nominal) return led;
    if (own->nominal != theirs->nominal.negated()) return std::nullopt;
    led.sign = -led.sign;  // clamped face to face
    return led;
  }

  std::optional<Error> addDistance(const GapMember& member, const Part& part,
                                   const std::string& pointer) {
    if (const std::optional<GapMember> led = asLed(member, part)) {
      return addDistance(*led, *job_.part(led->part), pointer);
    }
    if (found_) {
      if (auto measured = foundDistance(member, part)) {
        members_.push_back(*std::move(measured));
        return std::nullopt;
      }
    }
    const auto at = [&](Error error) {
      const bool atEnd = error.place == member.to && member.to != member.from;
      error.place = pointer + (atEnd ? "/to" : "/from");
      error.text = part.name + ": " + error.text;
      return error;
    };
    const MadePart* made = zeroOf(part);
    Result<Stack> stack = made ? stackFromZero({part, *made->solution, made->setup, job_.machine},
                                               member.axis, member.from, member.to, held_)
                               : alongThePrint(part, member);
    if (!stack) return at(stack.error());
    if (!addBase(*stack, member.sign)) return gapTooFar(pointer);
    for (StackMember& link : stack->members) {
      link.part = part.name;
      if (member.sign < 0) link.factor = link.factor.negated();
      if (!addLink(part, member.axis, std::move(link))) return gapTooFar(pointer);
    }
    return std::nullopt;
  }

  // What slopes leave of a nominal, and how far they bend.
  bool addBase(const Stack& stack, int sign) {
    std::optional<Rational> rest = stack.nominal;
    for (const StackMember& one : stack.members) {
      const auto adds = one.factor.times(Rational(one.nominal));
      rest = rest && adds ? rest->minus(*adds) : std::nullopt;
    }
    const auto base = rest ? base_.plus(sign < 0 ? rest->negated() : *rest) : std::nullopt;
    if (base) base_ = *base;
    if (stack.secondOrder) secondOrder_ = secondOrder_.value_or(0) + *stack.secondOrder;
    return base.has_value();
  }

  Result<Stack> alongThePrint(const Part& part, const GapMember& member) {
    if (!member.axis) return drawnStack(part, std::optional<Axis>(), member.from, member.to);
    const Result<const ToleranceNetwork*> network = networkFor(part, *member.axis);
    if (!network) return network.error();
    return drawnStack(part, **network, member.from, member.to);
  }

  const MadePart* zeroOf(const Part& part) const {
    for (const MadePart& one : made_) {
      if (one.part == part.name) return &one;
    }
    return nullptr;
  }

  // A reading of the one piece there is of a part counts once, with all its factors.
  bool addLink(const Part& part, std::optional<Axis> axis, StackMember link) {
    if (part.quantity <= 1) {
      const auto same = std::find_if(origins_.begin(), origins_.end(), [&](const Origin& one) {
        const StackMember& other = members_[one.member];
        const bool alike = one.axis == axis || other.isSlanted || link.isSlanted;
        return one.part == &part && alike && sameLink(other, link);
      });
      if (same != origins_.end()) {
        StackMember& other = members_[same->member];
        const auto sum = other.factor.plus(link.factor);
        if (sum) other.factor = *sum;
        other.isSlanted = other.isSlanted || link.isSlanted;
        return sum.has_value();
      }
      origins_.push_back({&part, axis, members_.size()});
    }
    members_.push_back(std::move(link));
    return true;
  }

  Result<const ToleranceNetwork*> networkFor(const Part& part, Axis axis) {
    for (const Network& one : networks_) {
      if (one.part == &part && one.network.axis == axis) return &one.network;
    }
    Result<ToleranceNetwork> made = toleranceNetworkOf(part, axis);
    if (!made) return made.error();
    networks_.push_back({&part, std::move(made).value()});
    return &networks_.back().network;
  }

  struct Network {
    const Part* part;
    ToleranceNetwork network;
  };
  struct Origin {
    const Part* part;
    std::optional<Axis> axis;
    std::size_t member;  // index into members_
  };

  const Job& job_;
  std::vector<MadePart> made_;
  std::optional<Length> held_;
  const FoundFigures* found_ = nullptr;
  std::vector<Network> networks_;
  std::vector<Origin> origins_;
  std::vector<StackMember> members_;
  Rational base_;
  std::optional<std::int64_t> secondOrder_;
};

Result<GapStack> addedUp(const Gap& gap, GapWalk walk, double inflation) {
  GapStack all;
  if (gap.least) all.least = gap.least->value;
  if (gap.greatest) all.greatest = gap.greatest->value;
  if (all.least && all.greatest && *all.greatest < *all.least) {
    return gapFault(ErrorCode::badRequest, "the greatest is less than the least", "/greatest");
  }
  if (gap.members.empty()) {
    return gapFault(ErrorCode::badRequest, "a gap has at least one member", "/members");
  }
  for (std::size_t i = 0; i < gap.members.size(); ++i) {
    const auto fault = walk.add(gap.members[i], placeOfMember(i));
    if (fault) return *fault;
  }
  Result<Stack> stack = walk.stack(inflation);
  if (!stack) {
    Error error = stack.error();
    error.place = "/members";
    return error;
  }
  all.stack = std::move(stack).value();
  return all;
}

}  // namespace

bool GapStack::keeps(const Span& span) const {
  return beyond(span) == Span{};
}

Span GapStack::beyond(const Span& span) const {
  Span over;
  if (least) over.low = std::max<std::int64_t>(0, least->ticks() - span.low);
  if (greatest) over.high = std::max<std::int64_t>(0, span.high - greatest->ticks());
  return over;
}

std::string placeOfMember(std::size_t member) {
  return "/members/" + std::to_string(member);
}

Result<GapStack> gapStack(const Job& job, const Gap& gap, double inflation) {
  return gapStackFromZeros(job, gap, {}, std::nullopt, inflation);
}

Result<GapStack> gapStackFromZeros(const Job& job, const Gap& gap,
                                   const std::vector<MadePart>& made, std::optional<Length> held,
                                   double inflation) {
  return addedUp(gap, GapWalk(job, made, held), inflation);
}

Result<GapStack> gapStackAsFound(const Job& job, const Gap& gap, const FoundFigures& found,
                                 double inflation) {
  return addedUp(gap, GapWalk(job, found), inflation);
}

std::vector<Error> gapFaults(const Job& job) {
  std::vector<Error> faults;
  for (std::size_t i = 0; i < job.gaps.size(); ++i) {
    const Result<GapStack> stack = gapStack(job, job.gaps[i]);
    if (stack) continue;
    Error error = stack.error();
    error.place = "/gaps/" + std::to_string(i) + error.place;
    faults.push_back(std::move(error));
  }
  return faults;
}

}  // namespace inchwright
