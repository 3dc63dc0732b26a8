#include "core/document/gap_document.h"

#include "core/document/kit_document.h"
#include "core/document/object_writer.h"

namespace inchwright {
namespace {

GapMember readMember(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  GapMember member;
  ObjectReader object(value, where, trouble);
  object.read("name", member.name);
  if (const auto sign = object.textOf("sign")) {
    if (*sign != "+" && *sign != "-") object.report("sign", "a sign is `+` or `-`");
    member.sign = *sign == "-" ? -1 : 1;
  }
  object.read("part", member.part);
  member.isStraight = object.textOf("axis") == "centres";
  if (!member.isStraight) object.readWord("axis", member.axis, axisNamed, 3);
  object.read("from", member.from);
  object.read("to", member.to);
  object.read("length", member.length, unit);
  object.read("fit", member.fit);
  object.read("size", member.size, unit);
  readSizeOrPlace(object, "hole", member.hole, unit);
  readSizeOrPlace(object, "shaft", member.shaft, unit);
  object.read("screw", member.screw);
  member.extra = object.rest();
  return member;
}

void writeMember(std::string& out, const GapMember& member) {
  ObjectWriter object(out);
  object.textIfAny("name", member.name);
  object.textIfAny("part", member.part);
  if (member.axis) object.text("axis", nameOf(*member.axis));
  if (member.isStraight) object.text("axis", "centres");
  object.textIfAny("from", member.from);
  object.textIfAny("to", member.to);
  object.figure("length", member.length);
  object.textIfAny("fit", member.fit);
  object.figure("size", member.size);
  if (member.hole) writeSizeOrPlace(object.value("hole"), *member.hole);
  if (member.shaft) writeSizeOrPlace(object.value("shaft"), *member.shaft);
  object.textIfAny("screw", member.screw);
  object.text("sign", member.sign < 0 ? "-" : "+");
  object.rest(member.extra);
  object.close();
}

}  // namespace

Gap readGap(const JsonValue& value, const Where& where, Trouble& trouble, Unit unit) {
  Gap gap;
  ObjectReader object(value, where, trouble);
  object.read("name", gap.name);
  object.read("least", gap.least, unit);
  object.read("greatest", gap.greatest, unit);
  object.require("members", "a gap lists its members");
  object.each("members", [&](const JsonValue& item, const Where& here) {
    gap.members.push_back(readMember(item, here, trouble, unit));
  });
  gap.extra = object.rest();
  return gap;
}

void writeGap(std::string& out, const Gap& gap, int indent) {
  const std::string lead(static_cast<std::size_t>(indent) + 4, ' ');
  ObjectWriter object(out, indent);
  object.text("name", gap.name);
  object.figure("least", gap.least);
  object.figure("greatest", gap.greatest);
  std::string& list = object.value("members");
  list += '[';
  for (std::size_t i = 0; i < gap.members.size(); ++i) {
    list += (i == 0 ? "\n" : ",\n") + lead;
    writeMember(list, gap.members[i]);
  }
  list += gap.members.empty() ? "]" : "\n" + lead.substr(2) + "]";
  object.rest(gap.extra);
  object.close();
}

}  // namespace inchwright
