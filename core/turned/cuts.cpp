#include "core/turned/cuts.h"

#include <algorithm>

namespace inchwright {
namespace {

/// A bore is drilled so much under its size, to be bored true: 1/32 in or 1 mm. Common practice.
Length drilledUnder(Unit unit) {
  return Length::ticks(unit == Unit::inch ? Length::kTicksPerInch / 32
                                          : Length::kTicksPerMillimetre);
}

class CutOrder {
 public:
  CutOrder(const Part& part, const Lathe& lathe, const TurnedShape& shape,
           const std::vector<const TurnedStretch*>& toCut, const LatheReadout& readout)
      : part_(part), lathe_(lathe), shape_(shape), toCut_(toCut), readout_(readout) {}

  std::vector<Cut> take(const Setup& setup, const Id& freeEdge, const Id& chuckEdge) {
    if (!freeEdge.empty()) addAtEdge(CutOp::face, freeEdge, {freeEdge});
    for (const Feature& feature : part_.features) {
      const auto* centre = feature.as<kind::CentreDrill>();
      if (centre && centre->at == freeEdge) addAtEdge(CutOp::centreDrill, freeEdge, {feature.id});
    }
    addRoughing();
    addBores();
    addKind(CutOp::knurl, FeatureKind::knurl);
    addFinishing();
    addKind(CutOp::groove, FeatureKind::groove);
    addChamfers(freeEdge);
    addKind(CutOp::thread, FeatureKind::screwed);
    addBreakingOfEdges();
    addPartOff(setup, chuckEdge);
    return std::move(cuts_);
  }

 private:
  /// The diameter at the end nearer the chuck.
  std::optional<Length> diaOf(const TurnedStretch& one) const {
    return readout_.held() == Side::left ? one.atLeft : one.atRight;
  }
  std::optional<Length> largestOf(const TurnedStretch& one) const {
    if (!one.atLeft || !one.atRight) return std::nullopt;
    return std::max(*one.atLeft, *one.atRight);
  }
  const Rational& chuckEndOf(const TurnedStretch& one) const {
    return readout_.held() == Side::left ? *one.left : *one.right;
  }

  const Rational& freeEndOf(const TurnedStretch& one) const {
    return readout_.held() == Side::left ? *one.right : *one.left;
  }
  bool beginsFree(const TurnedStretch& one) const {
    return (readout_.held() == Side::left ? shape_.rightEnd : shape_.leftEnd) == freeEndOf(one);
  }

  DrillTo drillToFor(const TurnedStretch& one) const {
    const Rational& end = chuckEndOf(one);
    if ((readout_.held() == Side::left ? shape_.leftEnd : shape_.rightEnd) == end) {
      return DrillTo::through;
    }
    const bool goesOn = std::any_of(shape_.stretches.begin(), shape_.stretches.end(),
                                    [&](const TurnedStretch& other) {
                                      return other.inner && other.left && *other.left <= end &&
                                             *other.right >= end && chuckEndOf(other) != end;
                                    });
    return goesOn ? DrillTo::fullDiameter : DrillTo::point;
  }

  void add(CutOp op, const TurnedStretch& one, std::optional<Length> dia) {
    Cut cut;
    cut.op = op;
    cut.of = {one.id};
    cut.length = readout_.carriage(chuckEndOf(one), one.exact);
    const TurnedStretch* inFront = shape_.inFrontOf(one, readout_.held() == Side::left);
    if (inFront) cut.behind = inFront->id;
    const bool within = op == CutOp::groove || op == CutOp::knurl || op == CutOp::thread;
    if ((inFront || within) && !beginsFree(one)) {
      cut.from = readout_.carriage(freeEndOf(one), one.exact);
    }
    if (op == CutOp::drill) cut.drillTo = drillToFor(one);
    if (dia) cut.dia = readout_.cross(*dia, one.exact);
    if (one.includedDegrees && op == CutOp::finish) cut.topSlide = *one.includedDegrees / 2;
    cuts_.push_back(std::move(cut));
  }

  void addAtEdge(CutOp op, const Id& edge, std::vector<Id> of) {
    Cut cut;
    cut.op = op;
    cut.of = std::move(of);
    if (const auto at = shape_.edgeAt(edge)) cut.length = readout_.carriage(*at, true);
    cuts_.push_back(std::move(cut));
  }

  /// A thread whose blank is a surface of its own is not turned again.
  bool isTurnedAs(const TurnedStretch& one) const {
    if (!one.isThread()) return false;
    return std::any_of(toCut_.begin(), toCut_.end(), [&](const TurnedStretch* other) {
      return other->isPlain() && *other->left <= *one.left && *other->right >= *one.right &&
             other->atLeft == one.atLeft;
    });
  }

  /// The surfaces, largest first: the bar gets thinner as it is roughed.
  std::vector<const TurnedStretch*> surfacesBySize() const {
    std::vector<const TurnedStretch*> surfaces;
    for (const TurnedStretch* one : toCut_) {
      if (one->standsOut() && largestOf(*one) && !isTurnedAs(*one)) surfaces.push_back(one);
    }
    std::stable_sort(surfaces.begin(), surfaces.end(),
                     [&](const TurnedStretch* a, const TurnedStretch* b) {
                       return *largestOf(*a) > *largestOf(*b);
                     });
    return surfaces;
  }

  void addRoughing() {
    const Length leaves =
        lathe_.roughLeaves ? lathe_.roughLeaves->value : customaryRoughLeaves(lathe_.unit);
    for (const TurnedStretch* one : surfacesBySize()) {
      add(CutOp::rough, *one, largestOf(*one)->plus(leaves));
    }
  }

  void addBores() {
    std::vector<const TurnedStretch*> bores;
    for (const TurnedStretch* one : toCut_) {
      if (one->inner && one->atLeft) bores.push_back(one);
    }
    // The smallest goes deepest and is drilled first; the larger ones are opened out over it.
    std::stable_sort(
        bores.begin(), bores.end(),
        [](const TurnedStretch* a, const TurnedStretch* b) { return *a->atLeft < *b->atLeft; });
    for (const TurnedStretch* one : bores) {
      // A drill would take away what stands in front of it.
      if (shape_.inFrontOf(*one, readout_.held() == Side::left)) continue;
      const auto under = one->atLeft->minus(drilledUnder(lathe_.unit));
      if (under && under->ticks() > 0) add(CutOp::drill, *one, under);
    }
    for (const TurnedStretch* one : bores) add(CutOp::bore, *one, one->atLeft);
  }

  void addKind(CutOp op, FeatureKind kind) {
    for (const TurnedStretch* one : toCut_) {
      if (one->kind == kind) add(op, *one, diaOf(*one));
    }
  }

  void addFinishing() {
    for (const TurnedStretch* one : surfacesBySize()) add(CutOp::finish, *one, diaOf(*one));
  }

  bool isCut(const Id& edge) const {
    return std::any_of(toCut_.begin(), toCut_.end(), [&](const TurnedStretch* one) {
      const std::vector<Id>* between = betweenOf(*part_.feature(one->id));
      return std::find(between->begin(), between->end(), edge) != between->end();
    });
  }

  void addChamfers(const Id& freeEdge) {
    for (const Feature& feature : part_.features) {
      const auto* chamfer = feature.as<kind::Chamfer>();
      if (!chamfer || (chamfer->at != freeEdge && !isCut(chamfer->at))) continue;
      addAtEdge(CutOp::chamfer, chamfer->at, {feature.id});
    }
  }

  void addBreakingOfEdges() {
    Cut cut;
    cut.op = CutOp::deburr;
    for (const TurnedStretch* one : toCut_) cut.of.push_back(one->id);
    if (!cut.of.empty()) cuts_.push_back(std::move(cut));
  }

  void addPartOff(const Setup& setup, const Id& chuckEdge) {
    const std::optional<PartOff>& partOff = setup.chucked->partOff;
    const auto at = shape_.edgeAt(chuckEdge);
    if (!partOff || !at) return;
    Cut cut;
    cut.op = CutOp::partOff;
    cut.of = {chuckEdge};
    const bool byLeft = partOff->corner == ToolCorner::left;
    cut.length = readout_.carriage(*at, true, byLeft ? partOff->width.value : Length());
    cuts_.push_back(std::move(cut));
  }

  const Part& part_;
  const Lathe& lathe_;
  const TurnedShape& shape_;
  const std::vector<const TurnedStretch*>& toCut_;
  const LatheReadout& readout_;
  std::vector<Cut> cuts_;
};

}  // namespace

std::vector<Cut> cutsOf(const Part& part, const Lathe& lathe, const Setup& setup,
                        const TurnedShape& shape, const std::vector<const TurnedStretch*>& toCut,
                        const LatheReadout& readout, const Id& freeEdge, const Id& chuckEdge) {
  return CutOrder(part, lathe, shape, toCut, readout).take(setup, freeEdge, chuckEdge);
}

}  // namespace inchwright
