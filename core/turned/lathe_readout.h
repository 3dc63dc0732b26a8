#pragma once

#include "core/plan/zero.h"
#include "core/turned/lathe_work.h"

namespace inchwright {

/// Turns places along the part's X and diameters into what the lathe's readouts show.
class LatheReadout {
 public:
  /// Zero as the setup says, else on the free end. Errors: as `latheWork`.
  static Result<LatheReadout> of(const Lathe& lathe, const PartAt& at, const TurnedShape& shape);

  const Step& step() const { return step_; }
  Side held() const { return held_; }
  const Id& zeroAt() const { return zeroAt_; }
  bool zeroAssumed() const { return zeroAssumed_; }

  /// At a place along X of the part, ticks; `further` is added towards the chuck.
  LatheFigure carriage(const Rational& x, bool exact, Length further = {}) const;
  LatheFigure cross(Length diameter, bool exact) const;
  /// A length or diameter as it stands, at the lathe's step.
  LatheFigure figure(const Rational& ticks, bool exact) const;

 private:
  LatheReadout() = default;

  Step step_;
  Side held_ = Side::left;
  Rational zero_;
  Id zeroAt_;
  bool zeroAssumed_ = false;
  int toChuck_ = 1;
  bool halved_ = false;
};

}  // namespace inchwright
