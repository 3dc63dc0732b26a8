#include "core/plan/touch_off.h"

#include <utility>

#include "core/shop/edge_finders.h"

namespace inchwright {
namespace {

/// A contact with where it is: the side with its stock, or the place, along the part's axis.
struct Touched {
  Contact at;
  std::optional<Side> side;
  Rational position;

  bool isPlane() const { return at.isEdge() && !side; }
};

/// Finds zero along one axis of the table.
class AxisFinder {
 public:
  AxisFinder(const WorkAt& work, const TableAxis& axis, const FinderTip& tip)
      : work_(work), axis_(axis), tip_(tip) {}

  Result<TouchOff> take() && {
    const ZeroAlong& asked = axis_.zero->asked;
    touch_.axis = axis_;
    if (asked.middle.empty()) {
      findAt(touched(asked.at));
    } else {
      findMiddle(touched(asked.middle.front()), touched(asked.middle.back()));
    }
    if (failure_) return *failure_;
    return std::move(touch_);
  }

 private:
  Touched touched(const Id& place) {
    const Axis along = axis_.part.axis;
    Touched found;
    found.at.place = place;
    const Feature* feature = featureOfPlace(work_.part, place);
    const Position* position = work_.position(place, along);
    std::optional<Rational> now;
    if (feature && position) {
      found.at.kind = feature->kind();
      found.at.whole = feature->id == place;
      found.side = work_.sideOf(*feature, along);
      if (found.side) {
        found.at.side = tableSideOf(*found.side, work_.axes);
        const std::optional<Lettered>& left = work_.setup.stockLettered(*found.side);
        if (left && !left->value.isZero()) found.at.stock = left;
      }
      now = position->ticks.plus(work_.stockBeyond(*feature, along).rational());
    }
    if (!now) fail();
    found.position = now.value_or(Rational(0));
    return found;
  }

  void findAt(const Touched& touched) {
    TouchStep step;
    step.at = touched.at;
    step.use = proving_ ? TouchStep::Figure::shouldRead : TouchStep::Figure::set;
    if (touched.side) {
      step.figure = shown(spindleBeside(touched, outwardOnTable(touched)));
    } else if (touched.isPlane()) {
      step.kind = TouchStep::Kind::touchPlane;
      step.figure = shown(spindleBeside(touched, -1));
      step.beyond = shown(spindleBeside(touched, 1));
    } else {
      step.kind = TouchStep::Kind::pickUp;
      step.figure = shown(touched.position);
    }
    touch_.steps.push_back(std::move(step));
  }

  void findMiddle(Touched first, Touched second) {
    const std::optional<Rational> a = axis_.onTable(first.position);
    const std::optional<Rational> b = axis_.onTable(second.position);
    if (!a || !b) return fail();
    if (*b < *a) std::swap(first, second);
    const bool bothSides =
        first.side && second.side && outwardOnTable(first) != outwardOnTable(second);
    const bool bothPlaces = !first.side && !second.side && !first.isPlane() && !second.isPlane();
    if (!bothSides && !bothPlaces) {
      // The tip does not cancel here, so zero is taken from one and proved on the other.
      findAt(first);
      proving_ = true;
      return findAt(second);
    }
    const std::optional<Rational> sum = first.position.plus(second.position);
    const std::optional<Rational> middle = sum ? sum->over(Rational(2)) : std::nullopt;
    // Apart the spindle stands outside both, face to face it stands between them.
    const auto spindle = [&](const Touched& touched) {
      return bothSides ? spindleBeside(touched, outwardOnTable(touched)) : touched.position;
    };
    const std::optional<Rational> from = spindle(first), to = spindle(second);
    const std::optional<Rational> distance = from && to ? to->minus(*from) : std::nullopt;
    if (!middle || !distance) return fail();

    TouchStep step;
    step.kind = bothSides ? TouchStep::Kind::touchSide : TouchStep::Kind::pickUp;
    step.at = first.at;
    step.figure = counted(Rational(0));
    touch_.steps.push_back(step);
    step.at = second.at;
    step.sameTip = bothSides;
    step.use = TouchStep::Figure::shouldReadAbout;
    step.figure = counted(axis_.part.sign * axis_.counts > 0 ? *distance : distance->negated());
    touch_.steps.push_back(step);
    TouchStep back;
    back.kind = TouchStep::Kind::driveBack;
    back.ofStock = first.at.stock || second.at.stock;
    back.figure = shown(middle);
    touch_.steps.push_back(std::move(back));
  }

  /// +1 when the side faces right or away on the table.
  int outwardOnTable(const Touched& touched) const {
    return outward(*touched.side) * axis_.part.sign;
  }

  /// The spindle's position along the part's axis with the tip against a plane, standing to the
  /// right of or beyond it (+1) or to the left of or before it (−1) on the table.
  std::optional<Rational> spindleBeside(const Touched& touched, int tableSide) const {
    const std::optional<Rational> half = tip_.diameter.rational().over(Rational(2));
    if (!half) return std::nullopt;
    return tableSide * axis_.part.sign > 0 ? touched.position.plus(*half)
                                           : touched.position.minus(*half);
  }

  Coordinate shown(const std::optional<Rational>& position) {
    const std::optional<Rational> ticks = position ? axis_.onReadout(*position) : std::nullopt;
    if (ticks) return counted(*ticks);
    fail();
    return {};
  }

  Coordinate counted(const Rational& ticks) {
    Result<Coordinate> figure = coordinateOf(ticks, true, work_.step);
    if (figure) return *std::move(figure);
    failure_ = figure.error();
    return {};
  }

  void fail() {
    failure_ = Error{ErrorCode::outOfRange, "a preset is beyond what can be held", {}, {}};
  }

  const WorkAt& work_;
  const TableAxis& axis_;
  const FinderTip& tip_;
  bool proving_ = false;  ///< zero is set: figures say what the readout should show
  TouchOff touch_;
  std::optional<Error> failure_;
};

// Z counts up as the tool rises. Without a zero of its own it is the finished face that is up.
Result<TouchOff> depthTouchOff(const WorkAt& work) {
  const Face face = work.setup.face;
  TouchOff touch;
  touch.axis = {MachineAxis::z, work.axes.z, 1, {}};
  touch.stockOnTop = work.setup.stockOn(face);
  TouchStep step;
  step.kind = TouchStep::Kind::touchTop;
  if (!touch.stockOnTop.isZero()) step.at.stock = work.setup.stockLettered(face);
  std::optional<Rational> preset = touch.stockOnTop.rational();
  if (work.setup.zeroAlong(axisAcross(face))) {
    Result<std::optional<FoundZero>> zero = findZero(work, axisAcross(face));
    if (!zero) return zero.error();
    touch.axis.zero = *std::move(zero);
    const Feature* up = nullptr;
    for (const Feature& feature : work.part.features) {
      if (outerSideOf(feature, axisAcross(face)) == face) up = &feature;
    }
    const Position* top = up ? work.position(up->id, axisAcross(face)) : nullptr;
    if (!top) {
      step.kind = TouchStep::Kind::noTop;
      touch.steps.push_back(std::move(step));
      return touch;
    }
    const std::optional<Rational> above = touch.axis.onReadout(top->ticks);
    preset = above ? above->plus(touch.stockOnTop.rational()) : std::nullopt;
  }
  Result<Coordinate> shown = coordinateOf(preset, true, work.step);
  if (!shown) return shown.error();
  step.figure = *std::move(shown);
  touch.steps.push_back(std::move(step));
  return touch;
}

}  // namespace

FinderTip finderTip(const Machine& machine, Unit shown) {
  if (machine.finder) return {machine.finder->value, machine.finder};
  return {customaryFinder(shown).contact, std::nullopt};
}

Result<std::vector<TouchOff>> touchOffs(const WorkAt& work, const FinderTip& tip) {
  std::vector<TouchOff> all;
  for (const TableAxis* axis : {&work.x, &work.y}) {
    if (!axis->zero) continue;
    Result<TouchOff> touch = AxisFinder(work, *axis, tip).take();
    if (!touch) return touch.error();
    all.push_back(*std::move(touch));
  }
  Result<TouchOff> depth = depthTouchOff(work);
  if (!depth) return depth.error();
  all.push_back(*std::move(depth));
  return all;
}

}  // namespace inchwright
