#pragma once

#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

#include "core/part/feature.h"

namespace inchwright {

/// Takes every member of a feature's kind and does nothing; what needs some of them overloads those
/// and takes the rest from here (`using NoMembers::…` or by hiding).
///
/// - word: of an enumeration, or an optional one; `needed` says what is missing without it.
/// - wordUnless: left out of the document where it has that value.
/// - size: a length greater than 0, refused where it is lettered with the symbol named.
/// - id, ids, pair: names of places or features of this part; a pair is two or none.
/// - partPlace: a place of another part.
/// - flag: left out of the document where it is false.
/// - count: how many holes, as such or by the spaces between them.
struct NoMembers {
  template <class Word>
  void word(std::string_view, Word&) {}
  template <class Word>
  void needed(std::string_view, Word&, std::string_view) {}
  template <class Word>
  void wordUnless(std::string_view, Word&, std::remove_const_t<Word>) {}
  template <class Size>
  void size(std::string_view, Size&, SizeSymbol) {}
  template <class Angle>
  void angle(std::string_view, Angle&) {}
  template <class Depth>
  void depth(std::string_view, Depth&) {}
  template <class Text>
  void text(std::string_view, Text&) {}
  template <class Texts>
  void texts(std::string_view, Texts&) {}
  template <class Name>
  void id(std::string_view, Name&) {}
  template <class Names>
  void ids(std::string_view, Names&) {}
  template <class Names>
  void pair(std::string_view, Names&) {}
  template <class Place>
  void partPlace(std::string_view, Place&) {}
  template <class Flag>
  void flag(std::string_view, Flag&) {}
  template <class Kind>
  void count(Kind&) {}
};

/// What is drilled, in the document's order.
template <class Drilled, class Members>
void visitDrilled(Drilled& drilled, Members& members) {
  members.size("diameter", drilled.diameter, SizeSymbol::radius);
  members.text("limits", drilled.limits);
  members.word("make", drilled.make);
  members.depth("depth", drilled.depth);
  members.text("thread", drilled.thread);
  members.size("seat_diameter", drilled.seatDiameter, SizeSymbol::radius);
  members.size("seat_depth", drilled.seatDepth, SizeSymbol::none);
  members.angle("seat_angle", drilled.seatAngle);
  members.wordUnless("locate", drilled.locate, Locate::coordinate);
  members.partPlace("mate", drilled.mate);
  members.flag("breaks_out", drilled.breaksOut);
  members.ids("meets", drilled.meets);
}

/// Calls `members` for each member of the feature's kind, in the document's order: the one place
/// that knows which kind has which. The feature may be const.
template <class AnyFeature, class Members>
void visitMembers(AnyFeature& feature, Members& members) {
  const auto visitor = [&](auto& shape) {
    using Kind = std::remove_const_t<std::remove_reference_t<decltype(shape)>>;
    if constexpr (std::is_same_v<Kind, kind::Edge>) {
      members.needed("axis", shape.axis, "an edge needs its `axis`: the one it lies square to");
      members.word("side", shape.side);
      return;
    } else if constexpr (std::is_same_v<Kind, kind::Slot>) {
      members.word("axis", shape.axis);
    } else if constexpr (std::is_same_v<Kind, kind::Row>) {
      members.needed("axis", shape.axis, "a row needs the `axis` it runs along");
    } else if constexpr (std::is_same_v<Kind, kind::Round>) {
      members.word("side", shape.side);
    }
    if constexpr (requires { shape.between; }) {
      members.pair("between", shape.between);
    } else if constexpr (requires { shape.at; }) {
      members.id("at", shape.at);
    } else {
      members.word("face", feature.face);
    }
    if constexpr (std::is_same_v<Kind, kind::Hole>) {
      visitDrilled(shape.drilled, members);
    } else if constexpr (std::is_same_v<Kind, kind::Slot>) {
      members.size("width", shape.width, SizeSymbol::none);
      members.size("length", shape.length, SizeSymbol::none);
      members.pair("ends", shape.ends);
      members.id("about", shape.about);
      members.size("cutter", shape.cutter, SizeSymbol::radius);
      members.depth("depth", shape.depth);
      members.ids("meets", shape.meets);
    } else if constexpr (std::is_same_v<Kind, kind::Ring>) {
      members.count(shape);
      members.size("pcd", shape.pitchDiameter, SizeSymbol::radius);
      members.angle("first_angle", shape.firstAngle);
      members.word("sense", shape.sense);
      members.texts("by_trace", shape.byTrace);
      visitDrilled(shape.drilled, members);
    } else if constexpr (std::is_same_v<Kind, kind::Row>) {
      members.count(shape);
      members.size("pitch", shape.pitch, SizeSymbol::none);
      members.texts("by_trace", shape.byTrace);
      visitDrilled(shape.drilled, members);
    } else if constexpr (std::is_same_v<Kind, kind::Round>) {
      members.size("radius", shape.radius, SizeSymbol::diameter);
      members.id("about", shape.about);
      members.pair("corner", shape.corner);
    } else if constexpr (std::is_same_v<Kind, kind::Line>) {
      members.ids("through", shape.through);
    } else if constexpr (std::is_same_v<Kind, kind::Arc>) {
      members.size("radius", shape.radius, SizeSymbol::diameter);
      members.ids("through", shape.through);
    } else if constexpr (std::is_same_v<Kind, kind::Taper>) {
      members.size("large", shape.large, SizeSymbol::radius);
      members.size("small", shape.small, SizeSymbol::radius);
      members.angle("angle", shape.angle);
      members.size("per_foot", shape.perFoot, SizeSymbol::none);
      members.id("large_at", shape.largeAt);
    } else if constexpr (std::is_same_v<Kind, kind::Screwed>) {
      members.text("thread", shape.thread);
      members.wordUnless("hand", shape.hand, Hand::right);
      members.size("runout", shape.runout, SizeSymbol::none);
    } else if constexpr (std::is_same_v<Kind, kind::Knurl>) {
      members.size("pitch", shape.pitch, SizeSymbol::none);
      members.text("pattern", shape.pattern);
    } else if constexpr (std::is_same_v<Kind, kind::Chamfer>) {
      members.size("length", shape.length, SizeSymbol::none);
      members.angle("angle", shape.angle);
    } else if constexpr (std::is_same_v<Kind, kind::CentreDrill>) {
      members.text("size", shape.size);
    } else if constexpr (requires { shape.diameter; }) {
      members.size("diameter", shape.diameter, SizeSymbol::radius);
    }
  };
  std::visit(visitor, feature.shape);
}

}  // namespace inchwright
