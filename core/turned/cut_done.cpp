#include "core/turned/cut_done.h"

#include <algorithm>

#include "core/measure/writing.h"
#include "core/part/edit.h"

namespace inchwright {

std::string doneName(const Cut& cut) {
  std::string name(nameOf(cut.op));
  if (cut.length) name += ' ' + writeDecimal(cut.length->value, Unit::millimetre);
  if (cut.dia) name += " x " + writeDecimal(cut.dia->value, Unit::millimetre);
  return cut.length || cut.dia ? name + " mm" : name;
}

bool isCutDone(const Part& part, const std::string& setup, const Cut& cut) {
  const std::string name = doneName(cut);
  return std::all_of(cut.of.begin(), cut.of.end(), [&](const Id& id) {
    const std::vector<std::string> ticks = madeAt(part, id, setup).ticks;
    return std::find(ticks.begin(), ticks.end(), name) != ticks.end();
  });
}

Part withCutDone(Part part, const std::string& setup, const Cut& cut, bool done) {
  const std::string op(nameOf(cut.op));
  for (const Id& id : cut.of) {
    MadePlace made = madeAt(part, id, setup);
    std::erase_if(made.ticks, [&](const std::string& tick) {
      return tick == op || tick.starts_with(op + ' ');
    });
    if (done) made.ticks.push_back(doneName(cut));
    made.place = id;
    made.setup = setup;
    part = withMade(part, made);
  }
  return part;
}

}  // namespace inchwright
