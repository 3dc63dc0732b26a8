#pragma once

#include <optional>
#include <type_traits>

#include "core/part/shop_owned.h"

namespace inchwright {

// The members of a shop in the document's order, named once for the reader and the writer.
//
// - size: how large a tool is, which may stand alone for all of it; drills are a set, a tap's is
//   the name of its thread, pins have ranges.
// - needed: a length that has to be there; `figure` and `angle` may be left out.
// - word: of so many words of an enumeration. whole; wholeIfAny is left out where it is 0.
// - flag: left out where nobody said.

template <class T, class Kind>
concept OwnedAs = std::is_same_v<std::remove_const_t<T>, Kind>;

template <OwnedAs<OwnedDrills> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.size(tool.set);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedReamer> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.size(tool.size);
  see.word("by", tool.by, reamedByNamed, 2);
  see.figure("length", tool.length);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedTap> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.size(tool.size);
  see.word("lead", tool.lead, tapLeadNamed, 3);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedCutter> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.size(tool.size);
  see.wholeIfAny("flutes", tool.flutes);
  see.figure("length", tool.length);
  see.flag("centre_cutting", tool.centreCutting);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedSeatTool> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.size(tool.size);
  see.figure("pilot", tool.pilot);
  see.angle("angle", tool.angle);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedBoring> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.figure("least", tool.least);
  see.figure("greatest", tool.greatest);
  see.word("dial", tool.dial, dialCountsNamed, 2);
  see.figure("division", tool.division);
  see.figure("stands", tool.stands);
}

template <OwnedAs<OwnedParallels> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.needed("thick", tool.thick);
  see.needed("tall", tool.tall);
}

template <OwnedAs<OwnedPins> Tool, class See>
void visitOwned(Tool& tool, See& see) {
  see.ranges(tool);
  see.text("class", tool.pinClass);
  see.word("sign", tool.sign, pinSignNamed, 2);
}

template <OwnedAs<OwnedVice> Vice, class See>
void visitOwned(Vice& vice, See& see) {
  see.figure("jaw_width", vice.jawWidth);
  see.figure("jaw_height", vice.jawHeight);
  see.figure("opens", vice.opens);
}

template <OwnedAs<ReamingRule> Rule, class See>
void visitOwned(Rule& rule, See& see) {
  see.pair("machine", rule.machine);
  see.pair("hand", rule.hand);
}

template <OwnedAs<TappingRule> Rule, class See>
void visitOwned(Rule& rule, See& see) {
  see.whole("percent", rule.percent);
  see.whole("least", rule.least);
  see.whole("greatest", rule.greatest);
}

template <OwnedAs<Margins> Rule, class See>
void visitOwned(Rule& margins, See& see) {
  see.figure("around", margins.around);
  see.figure("wall", margins.wall);
  see.figure("below", margins.below);
}

/// Lists of tools, then what there is one of.
template <OwnedAs<Shop> Owner, class See>
void visitOwned(Owner& shop, See& see) {
  see.tools("drills", shop.drills);
  see.tools("reamers", shop.reamers);
  see.tools("taps", shop.taps);
  see.tools("cutters", shop.cutters);
  see.tools("countersinks", shop.countersinks);
  see.tools("counterbores", shop.counterbores);
  see.tools("boring", shop.boring);
  see.tools("parallels", shop.parallels);
  see.tools("pins", shop.pins);
  see.within("vice", shop.vice);
  see.within("reaming", shop.reaming);
  see.within("tapping", shop.tapping);
  see.within("margins", shop.margins);
}

}  // namespace inchwright
