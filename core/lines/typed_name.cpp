#include "core/lines/typed_name.h"

#include <algorithm>

#include "core/base/ascii.h"
#include "core/measure/lettered.h"

namespace inchwright {
namespace {

std::string inCapitals(std::string_view name) {
  std::string capitals(name);
  std::transform(capitals.begin(), capitals.end(), capitals.begin(), upperAscii);
  return capitals;
}

/// With the figures that letters are mistaken for: `l/4`, `O.25`.
std::string inFigures(std::string_view name) {
  std::string figures(name);
  for (char& c : figures) {
    if (c == 'O' || c == 'o') c = '0';
    if (c == 'l' || c == 'I') c = '1';
  }
  return figures;
}

}  // namespace

std::string nameFault(std::string_view name) {
  const std::string quoted = "`" + std::string(name) + "`";
  const bool letter = !name.empty() && upperAscii(name[0]) >= 'A' && upperAscii(name[0]) <= 'Z';
  const std::string figures = inFigures(name);
  // `R1` is a name, and `R.25` a radius.
  const bool mayBeFigure = !letter || name.find_first_of("./") != std::string_view::npos;
  if (mayBeFigure && readLength(figures).ok()) {
    if (figures == name) return quoted + " reads as a figure, and can't be a name";
    return quoted + " reads as a figure with a letter in it: is " + figures + " meant?";
  }
  return {};
}

std::string nameQuestion(const Part& part, std::string_view name, std::string_view renamed) {
  const std::string capitals = inCapitals(name);
  for (const Feature& other : part.features) {
    if (other.id == renamed || other.id == name || inCapitals(other.id) != capitals) continue;
    return "`" + std::string(name) + "` and `" + other.id + "` differ in capitals only";
  }
  return {};
}

}  // namespace inchwright
