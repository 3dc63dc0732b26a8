#include "core/lines/turned_line.h"

#include <utility>

#include "core/lines/feature_callout.h"
#include "core/lines/line_words.h"

namespace inchwright {
namespace {

/// What stands behind the edges of a turned feature.
class TurnedReader {
 public:
  TurnedReader(Feature feature, std::string_view tail, Unit unit)
      : feature_(std::move(feature)), words_(tail), unit_(unit) {}

  Result<FeatureLine> read() {
    if (auto* chamfer = feature_.as<kind::Chamfer>()) {
      if (!takeEdge(chamfer->at)) return fault_;
      const std::size_t at = words_.at();
      auto line = featureFromCallout(std::move(feature_), words_.takeRest(), Axis::x, unit_);
      if (line) return line;
      Error error = line.error();
      error.at = at + error.at.value_or(0);
      return error;
    }
    if (auto* drill = feature_.as<kind::CentreDrill>()) {
      if (!takeEdge(drill->at)) return fault_;
      drill->size = std::string(words_.takeRest());
      return done();
    }
    std::vector<Id> between(2);
    if (!takeEdge(between[0]) || !takeEdge(between[1])) return fault_;
    if (!readBetween(between)) return fault_;
    return done();
  }

 private:
  bool refuse(std::string what) {
    fault_ = words_.refuse(std::move(what));
    return false;
  }
  bool takeEdge(Id& edge) {
    if (words_.empty()) return refuse("name the edges it lies between, or the one it is at");
    edge = Id(words_.take());
    return true;
  }
  template <class Figure>
  bool takeFigure(Figure& member) {
    const std::size_t at = words_.at();
    auto figure =
        readLength(words_.takeUntil({"large", "small", "angle", "per_foot", "runout"}), {unit_});
    if (figure) {
      member = *std::move(figure);
      return true;
    }
    fault_ = figure.error();
    fault_.at = at + fault_.at.value_or(0);
    return false;
  }

  bool readBetween(std::vector<Id>& between) {
    if (auto* outside = feature_.as<kind::Outside>()) {
      outside->between = std::move(between);
      return takeFigure(outside->diameter);
    }
    if (auto* bored = feature_.as<kind::Bored>()) {
      bored->between = std::move(between);
      return takeFigure(bored->diameter);
    }
    if (auto* groove = feature_.as<kind::Groove>()) {
      groove->between = std::move(between);
      return takeFigure(groove->diameter);
    }
    if (auto* screwed = feature_.as<kind::Screwed>()) {
      screwed->between = std::move(between);
      screwed->thread = std::string(words_.takeUntil({"runout", "left"}));
      if (screwed->thread.empty()) return refuse("give the thread, such as 1/4-20 UNC or 2 BA");
      if (words_.takeIf("left")) screwed->hand = Hand::left;
      return !words_.takeIf("runout") || takeFigure(screwed->runout);
    }
    if (auto* knurl = feature_.as<kind::Knurl>()) {
      knurl->between = std::move(between);
      const std::string_view word = words_.peek();
      if (word == "diamond" || word == "straight") knurl->pattern = std::string(words_.take());
      return words_.empty() || takeFigure(knurl->pitch);
    }
    auto* taper = feature_.as<kind::Taper>();
    if (taper == nullptr) return refuse("this is no turned feature");
    taper->between = std::move(between);
    return readTaper(*taper);
  }

  /// `large 1/2 small 3/8`, `large 1/2 angle 10`, `small 3/8 per_foot 5/8`.
  bool readTaper(kind::Taper& taper) {
    while (!words_.empty()) {
      if (words_.takeIf("large")) {
        if (!takeFigure(taper.large)) return false;
      } else if (words_.takeIf("small")) {
        if (!takeFigure(taper.small)) return false;
      } else if (words_.takeIf("per_foot")) {
        if (!takeFigure(taper.perFoot)) return false;
      } else if (words_.takeIf("angle")) {
        const std::size_t at = words_.at();
        auto angle = readAngle(words_.takeUntil({"large", "small", "per_foot"}));
        if (!angle) {
          fault_ = angle.error();
          fault_.at = at + fault_.at.value_or(0);
          return false;
        }
        taper.angle = std::move(angle).value();
      } else {
        return refuse("say two of `large`, `small`, `angle`, `per_foot`, each with its figure");
      }
    }
    return true;
  }

  Result<FeatureLine> done() {
    if (words_.empty()) return FeatureLine{std::move(feature_), 0};
    return words_.refuse("`" + std::string(words_.peek()) + "` is more than this line needs");
  }

  Feature feature_;
  LineWords words_;
  Unit unit_;
  Error fault_;
};

}  // namespace

Result<FeatureLine> readTurnedLine(Feature feature, std::string_view tail, Unit unit) {
  return TurnedReader(std::move(feature), tail, unit).read();
}

}  // namespace inchwright
