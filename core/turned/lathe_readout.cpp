#include "core/turned/lathe_readout.h"

#include "core/plan/zero.h"

namespace inchwright {

Result<LatheReadout> LatheReadout::of(const Lathe& lathe, const PartAt& at,
                                      const TurnedShape& shape) {
  const Setup& setup = at.setup;
  LatheReadout readout;
  const Result<Step> step = readStep(lathe.step, lathe.unit);
  if (!step) return Error{step.error().code, step.error().text, "/lathe/step", step.error().at};
  readout.step_ = *step;
  readout.held_ = setup.chucked->held;
  readout.toChuck_ = lathe.carriageCounts == CarriageCounts::left ? 1 : -1;
  readout.halved_ = lathe.crossCounts == CrossCounts::radius;
  const ZeroAlong* asked = setup.zeroAlong(Axis::x);
  if (asked) {
    const Result<std::optional<FoundZero>> zero = findZero(at, Axis::x);
    if (!zero) return zero.error();
    if (*zero) {
      readout.zero_ = (*zero)->ticks;
      readout.zeroAt_ = asked->at;
      return readout;
    }
  }
  const bool fromRight = readout.held_ == Side::left;
  const std::optional<Rational>& end = fromRight ? shape.rightEnd : shape.leftEnd;
  if (!end) {
    return Error{ErrorCode::unsolvable,
                 "nothing says where the free end lies: say the setup's zero along x", setup.name};
  }
  readout.zero_ = *end;
  readout.zeroAt_ = fromRight ? shape.rightEdge : shape.leftEdge;
  readout.zeroAssumed_ = true;
  return readout;
}

LatheFigure LatheReadout::carriage(const Rational& x, bool exact, Length further) const {
  const Rational apart = held_ == Side::left ? *zero_.minus(x) : *x.minus(zero_);
  const Rational towards = *apart.plus(further.rational());
  return figure(toChuck_ > 0 ? towards : towards.negated(), exact);
}

LatheFigure LatheReadout::cross(Length diameter, bool exact) const {
  return figure(halved_ ? *Rational::of(diameter.ticks(), 2) : diameter.rational(), exact);
}

LatheFigure LatheReadout::figure(const Rational& ticks, bool exact) const {
  const Shown shown = showAtStep(ticks, step_);
  return {shown.text, *nearestTick(ticks), exact && ticks.isWhole()};
}

}  // namespace inchwright
