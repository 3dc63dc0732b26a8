#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/making/boring_cuts.h"
#include "core/making/hole_plan.h"
#include "core/shop/cutting_speeds.h"

namespace inchwright {

/// Gathers the steps of one hole; the parts of `planHole`, one file a way of making.
class HolePlanner {
 public:
  HolePlanner(const HoleWork& work, const ToolsOwned& tools, const std::vector<int>& speeds);

  HolePlan take() &&;

 private:
  /// A boring head that goes into a hole and opens it far enough.
  struct Bar {
    std::optional<DialCounts> dial;
    Length division;
    Unit unit = Unit::inch;  ///< of the division
    std::optional<Length> stands;
  };
  /// What a bore starts from.
  struct BoreStart {
    const DrillAtHand* drill = nullptr;
    const OwnedCutter* cutter = nullptr;

    Length size() const { return cutter ? cutter->size.value : drill->drill.diameter; }
  };

  // plan_hole.cpp
  void addWork();
  void addSpot();
  void addDrilled();
  void addSeat();
  void addSpotface();
  void addToSuit();
  bool pilotRuns(const OwnedSeatTool& tool) const;
  /// `verb` is what stands before the tool's size or name: nothing before a drill's.
  HoleStep& add(Op op, ToolKind kind, std::string_view verb, std::string named,
                std::optional<Length> size, Rule rule);
  /// The same of a lettered size.
  HoleStep& add(Op op, ToolKind kind, std::string_view verb, const Lettered& size, Rule rule);
  /// A drill with whatever goes before a large one. `blindFull` is how deep its full diameter goes
  /// in a blind hole.
  HoleStep& addDrill(const DrillAtHand& drill, Rule rule, std::optional<Length> blindFull);
  void addFirstDrills(const DrillAtHand& drill, std::optional<Length> blindFull);
  HoleStep& addOneDrill(Op op, const DrillAtHand& drill, Rule rule,
                        std::optional<Length> blindFull);
  /// Depths of a step whose end is `end` long beyond its full diameter.
  void setDepths(HoleStep& step, Length end, std::optional<Length> blindFull);
  void setSpeed(HoleStep& step, Length size, int partsOfTwo);
  Lacking& lack(Op op, std::string wanted, Lacking::Why why);
  void nameNearestDrills(Lacking& lacking, Length low, Length high);
  void addLocating();
  void setPins();

  // plan_reamed.cpp
  void addReamed();
  std::vector<OwnedReamer> reamersThatSuit() const;
  const DrillAtHand* drillBefore(const OwnedReamer& reamer) const;
  void addReam(const OwnedReamer& reamer);
  std::optional<Length> blindBeforeReam(const OwnedReamer& reamer, Length drill);
  bool addBoredThenReamed(const OwnedReamer& reamer, bool forPlace);

  // plan_tapped.cpp
  void addTapped();
  void addTap(const Thread& thread, const TapAtHand& tap);
  void nameNearestThreads(Lacking& lacking, Length major, const std::string& name);

  // plan_put_right.cpp
  void leaveAsFound();
  void leaveOutWhatIsCut();
  /// What a hole that came out wrong is open to already; 0 of one that is yet to be made.
  Length openAlready() const;
  void addLined();
  bool addBoredForLining(const Bushing& bushing);
  void addFinishInside();

  // plan_bored.cpp
  void addBored();
  std::optional<BoreStart> boreStart(Length target) const;
  std::optional<Bar> barFor(Length start, Length target) const;
  void addBoreStart(const BoreStart& start);
  void addCuts(const Bar& bar, const std::vector<BoreCut>& cuts, Rule rule);

  bool isThrough() const { return work_.drilled.depth.through || !work_.drilled.depth.length; }
  /// Of a blind hole, from the face as it is now.
  std::optional<Length> blindDepth() const;
  /// As deep as wanted, but short of the far side by the margin; never less deep than `least`.
  Length shortOfFar(Length wanted, Length least, Length end);
  std::string sizeText() const;

  const HoleWork& work_;
  const ToolsOwned& tools_;
  const std::vector<int>& speeds_;
  std::optional<CuttingSpeed> cutting_;
  Unit unit_ = Unit::inch;
  HolePlan plan_;
};

/// a + b, held at the bounds of a length: depths and sizes here are far from them, save where a
/// document is hostile.
Length sumHeld(Length a, Length b);

}  // namespace inchwright
