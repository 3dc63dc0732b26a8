#include "core/plan/touch_off.h"

#include <utility>

#include "core/shop/edge_finders.h"

namespace inchwright {
namespace {

/// One thing that zero rests on: a side to touch, or a place to pick up.
struct Contact {
  Id place;
  std::optional<Side> side;  ///< an outer side of the part
  bool plane = false;        ///< an edge that is no outer side: it may be touched from either side
  Length stock;              ///< still on the side
  /// Position along the part's axis of what is there now: the side with its stock, or the place.
  Rational position;
};

// `sign` is that of the part's axis along the machine's, whose two ways are `up` and `down`.
std::string phraseOf(const FoundZero& zero, int sign, std::string_view up, std::string_view down,
                     Unit shown) {
  const ZeroAlong& asked = zero.asked;
  std::string phrase;
  if (asked.middle.size() == 2) {
    phrase = "middle of " + asked.middle.front() + "–" + asked.middle.back();
    if (asked.ofStock) phrase += " (stock)";
  } else {
    phrase = "at " + asked.at;
  }
  if (asked.offset && !asked.offset->value.isZero()) {
    const Length offset = asked.offset->value;
    phrase += " + " + writePlain(offset.magnitude(), shown) + " ";
    phrase += (offset > Length()) == (sign > 0) ? up : down;
  }
  return phrase;
}

/// Words the touch-off of one axis of the table.
class AxisWords {
 public:
  AxisWords(const Part& part, const Solution& solution, const Setup& setup, const SetupFrame& frame,
            const TableAxis& axis, const FinderTip& tip, const Step& step)
      : part_(part),
        solution_(solution),
        setup_(setup),
        frame_(frame),
        axis_(axis),
        tip_(tip),
        step_(step) {}

  Result<TouchOff> take() && {
    const FoundZero& zero = *axis_.zero;
    touch_.alongX = axis_.alongX;
    touch_.what = zeroPhrase(axis_, step_.unit);
    if (zero.asked.middle.empty()) {
      findAt(contactAt(zero.asked.at));
    } else {
      findMiddle(contactAt(zero.asked.middle.front()), contactAt(zero.asked.middle.back()));
    }
    if (failure_) return *failure_;
    return std::move(touch_);
  }

 private:
  Contact contactAt(const Id& place) {
    const Axis along = axis_.part.axis;
    Contact contact;
    contact.place = place;
    const Feature* feature = featureOfPlace(part_, place);
    const Position* position = placedPosition(solution_, place, along);
    std::optional<Rational> now;
    if (feature && position) {
      contact.side = outerSideOf(*feature, along);
      contact.plane = feature->is(FeatureKind::edge) && !contact.side;
      if (contact.side) contact.stock = setup_.stockOn(*contact.side);
      now = position->ticks.plus(stockBeyond(setup_, *feature, along).rational());
    }
    if (now) {
      contact.position = *now;
    } else {
      fail();
    }
    return contact;
  }

  void findAt(const Contact& contact) {
    if (contact.side) {
      say("Touch " + sideWords(contact) + " with the " + tip_.text +
          " tip: " + setWords(spindleBeside(contact, outwardOnTable(contact))));
    } else if (contact.plane) {
      say("Touch edge " + contact.place + " with the " + tip_.text + " tip: standing " +
          standing(-1) + " of it, " + setWords(spindleBeside(contact, -1)) + "; standing " +
          standing(1) + " of it, " + setWords(spindleBeside(contact, 1)));
    } else {
      say("Pick up " + placeWords(contact.place) + ": " + setWords(contact.position));
    }
  }

  void findMiddle(Contact first, Contact second) {
    const std::optional<Rational> a = axis_.onTable(first.position);
    const std::optional<Rational> b = axis_.onTable(second.position);
    if (!a || !b) return fail();
    if (*b < *a) std::swap(first, second);
    const bool bothSides = first.side && second.side;
    const bool bothPlaces = !first.side && !second.side && !first.plane && !second.plane;
    if (!bothSides && !bothPlaces) {
      // The tip does not cancel here, so zero is taken from one and proved on the other.
      findAt(first);
      proving_ = true;
      return findAt(second);
    }
    const std::optional<Rational> sum = first.position.plus(second.position);
    const std::optional<Rational> middle = sum ? sum->over(Rational(2)) : std::nullopt;
    const std::optional<Rational> from = bothSides ? spindleBeside(first, -1) : first.position;
    const std::optional<Rational> to = bothSides ? spindleBeside(second, 1) : second.position;
    if (!middle || !from || !to) return fail();
    const std::optional<Rational> distance = to->minus(*from);
    if (!distance) return fail();
    const std::string start = bothSides
                                  ? "Touch " + sideWords(first) + " with the " + tip_.text + " tip"
                                  : "Pick up " + placeWords(first.place);
    const std::string end = bothSides ? "Touch " + sideWords(second) + " with the same tip"
                                      : "Pick up " + placeWords(second.place);
    const Rational counted = axis_.part.sign * axis_.counts > 0 ? *distance : distance->negated();
    say(start + ": set " + letter() + " " + signedAt(Rational(0)));
    say(end + ": " + letter() + " should read about " + signedAt(counted));
    say("Drive back to half of what it reads, the middle" +
        std::string(hasStock(first, second) ? " of the stock: " : ": ") + setWords(middle));
  }

  static bool hasStock(const Contact& first, const Contact& second) {
    return !first.stock.isZero() || !second.stock.isZero();
  }

  /// +1 when the side faces right or away on the table.
  int outwardOnTable(const Contact& contact) const {
    return outward(*contact.side) * axis_.part.sign;
  }

  /// The spindle's position along the part's axis with the tip against a plane, standing to the
  /// right of or beyond it (+1) or to the left of or before it (−1) on the table.
  std::optional<Rational> spindleBeside(const Contact& contact, int tableSide) const {
    const std::optional<Rational> half = tip_.diameter.rational().over(Rational(2));
    if (!half) return std::nullopt;
    return tableSide * axis_.part.sign > 0 ? contact.position.plus(*half)
                                           : contact.position.minus(*half);
  }

  std::string letter() const { return std::string(1, axis_.letter()); }

  std::string standing(int tableSide) const {
    if (axis_.alongX) return tableSide > 0 ? "right" : "left";
    return tableSide > 0 ? "on the far side" : "on the near side";
  }

  std::string sideWords(const Contact& contact) const {
    const std::optional<TableSide> side = tableSideOf(*contact.side, frame_.axes);
    std::string words =
        "the " + std::string(side ? nameOf(*side) : "outer") + " side (" + contact.place;
    if (!contact.stock.isZero()) words += ", " + plain(contact.stock) + " still on it";
    return words + ")";
  }

  std::string placeWords(const Id& place) const {
    const Feature* feature = featureOfPlace(part_, place);
    if (!feature) return place;
    const bool itself = feature->id == place;
    switch (feature->kind()) {
      case FeatureKind::hole:
        return "the bore of " + place + " with an indicator or a plug";
      case FeatureKind::row:
        return "the bore of " + place + " with an indicator or a plug";
      case FeatureKind::ring:
        return itself ? "the centre of ring " + place + ", midway between opposite holes"
                      : "the bore of " + place + " with an indicator or a plug";
      case FeatureKind::slot:
        return itself ? "the middle of slot " + place + ", its walls halved"
                      : "the end " + place + " of the slot with an indicator or a plug";
      default:
        return std::string(nameOf(feature->kind())) + " " + place + " with a pointer";
    }
  }

  std::string plain(Length length) const { return writePlain(length, step_.unit); }

  std::string setWords(const std::optional<Rational>& position) {
    const std::optional<Rational> ticks = position ? axis_.onReadout(*position) : std::nullopt;
    if (!ticks) {
      fail();
      return {};
    }
    const std::string figure = signedAt(*ticks);
    return proving_ ? letter() + " should read " + figure : "set " + letter() + " " + figure;
  }

  std::string signedAt(const Rational& ticks) {
    const Result<Coordinate> shown = coordinateOf(ticks, true, step_);
    if (!shown) {
      failure_ = shown.error();
      return {};
    }
    std::string text = signedText(*shown);
    if (!shown->rounding.isZero()) {
      text += " (exactly " + writeDecimal(shown->value, step_.unit) + ")";
    }
    return text;
  }

  void say(std::string step) { touch_.steps.push_back(std::move(step)); }

  void fail() {
    failure_ = Error{ErrorCode::outOfRange, "a preset is beyond what can be held", {}, {}};
  }

  const Part& part_;
  const Solution& solution_;
  const Setup& setup_;
  const SetupFrame& frame_;
  const TableAxis& axis_;
  const FinderTip& tip_;
  const Step& step_;
  bool proving_ = false;  ///< zero is set: figures say what the readout should show
  TouchOff touch_;
  std::optional<Error> failure_;
};

// Z counts up as the tool rises. Without a zero of its own it is the finished face that is up.
Result<TouchOff> depthTouchOff(const Part& part, const Solution& solution, const Setup& setup,
                               const SetupFrame& frame, const Step& step) {
  const Axis across = axisAcross(setup.face);
  const Length stock = setup.stockOn(setup.face);
  std::optional<Rational> preset = stock.rational();
  TouchOff touch;
  touch.depth = true;
  touch.what = stock.isZero() ? "top of the work" : "finished top of the work";
  if (setup.zeroAlong(across)) {
    const Result<std::optional<FoundZero>> zero = findZero(part, solution, setup, across);
    if (!zero) return zero.error();
    const Feature* up = nullptr;
    for (const Feature& feature : part.features) {
      if (feature.is(FeatureKind::edge) && sideOf(feature) == setup.face) up = &feature;
    }
    const Position* top = up ? placedPosition(solution, up->id, across) : nullptr;
    const TableAxis height{false, frame.axes.z, 1, *zero};
    if (*zero) touch.what = phraseOf(**zero, height.part.sign, "up", "down", step.unit);
    if (!top) {
      touch.steps.push_back("Set Z 0 there: the top of the work has no position on the print");
      return touch;
    }
    const std::optional<Rational> above = height.onReadout(top->ticks);
    preset = above ? above->plus(stock.rational()) : std::nullopt;
  }
  const Result<Coordinate> shown = coordinateOf(preset, true, step);
  if (!shown) return shown.error();
  std::string words = "Touch the top of the work with the tool";
  if (!stock.isZero()) words += ", " + writePlain(stock, step.unit) + " still on it";
  touch.steps.push_back(words + ": set Z " + signedText(*shown));
  return touch;
}

}  // namespace

FinderTip finderTip(const Machine& machine, Unit shown) {
  FinderTip tip;
  if (!machine.finder) {
    tip.assumed = true;
    const EdgeFinder& finder = customaryFinder(shown);
    tip.diameter = finder.contact;
    tip.text = shown == Unit::inch ? "0.200" : writeDecimal(finder.contact, shown);
    return tip;
  }
  tip.diameter = machine.finder->value;
  const std::string& text = machine.finder->text;
  const bool bare = text.find_first_not_of("0123456789./ ") == std::string::npos && !text.empty();
  tip.text = bare ? text : writeDecimal(tip.diameter, machine.finder->unit);
  if (machine.finder->unit != shown) tip.text += machine.finder->unit == Unit::inch ? " in" : " mm";
  return tip;
}

Result<std::vector<TouchOff>> touchOffs(const Part& part, const Solution& solution,
                                        const Setup& setup, const SetupFrame& frame,
                                        const FinderTip& tip, const Step& step) {
  std::vector<TouchOff> all;
  for (const TableAxis* axis : {&frame.x, &frame.y}) {
    if (!axis->zero) continue;
    Result<TouchOff> touch = AxisWords(part, solution, setup, frame, *axis, tip, step).take();
    if (!touch) return touch.error();
    all.push_back(*std::move(touch));
  }
  Result<TouchOff> depth = depthTouchOff(part, solution, setup, frame, step);
  if (!depth) return depth.error();
  all.push_back(*std::move(depth));
  return all;
}

std::string zeroPhrase(const TableAxis& axis, Unit shown) {
  if (!axis.zero) return "nowhere: nothing is placed along it";
  return axis.alongX ? phraseOf(*axis.zero, axis.part.sign, "to the right", "to the left", shown)
                     : phraseOf(*axis.zero, axis.part.sign, "away", "towards you", shown);
}

}  // namespace inchwright
