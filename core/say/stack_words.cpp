#include "core/say/stack_words.h"

namespace inchwright {
namespace {

std::string sideName(const SizeOrPlace& side) {
  if (const auto* size = std::get_if<Lettered>(&side)) return size->text;
  const PartPlace& at = std::get<PartPlace>(side);
  return at.place + " of " + at.part;
}

struct MemberNames {
  const StackMember& member;

  std::string operator()(const member::Read& what) const { return what.reading; }
  std::string operator()(const member::Shape& what) const {
    return std::string(nameOf(what.kind)) + " " + what.feature;
  }
  std::string operator()(const member::FromZero& what) const {
    return what.axis ? what.place + " " + std::string(nameOf(*what.axis)) : what.place;
  }
  std::string operator()(const member::Named& what) const { return what.name; }
  std::string operator()(const member::Alone&) const { return "length " + member.text; }
  std::string operator()(const member::Fitted& what) const {
    return "fit " + what.fit + " on " + what.size;
  }
  std::string operator()(const member::Screwed& what) const {
    return what.thread + " in " + what.fit + " hole " + what.drill;
  }
  std::string operator()(const member::ScrewedIn& what) const {
    return what.thread + " in hole " + sideName(what.hole);
  }
  std::string operator()(const member::Shafted& what) const {
    return "hole " + sideName(what.hole) + " on shaft " + sideName(what.shaft);
  }
  std::string operator()(const member::Found&) const { return "measured"; }
};

}  // namespace

std::string memberName(const StackMember& member) {
  return std::visit(MemberNames{member}, member.what);
}

std::string beginsAt(const StackMember& member) {
  return std::holds_alternative<member::FromZero>(member.what) ? "zero" : member.from;
}

}  // namespace inchwright
