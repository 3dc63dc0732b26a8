#include "core/say/figure_words.h"

namespace inchwright {
namespace {

// A whole number of ticks always ends in millimetres; in inches only where 127 divides it.
bool endsIn(Unit unit, Length length) {
  return unit == Unit::millimetre || length.ticks() % 127 == 0;
}

}  // namespace

std::string figureText(const Lettered& figure, Unit shown) {
  // A bare figure, with its tolerance if it has one, stands as lettered; anything else (a sum, a
  // figure in brackets or with a symbol) is written out.
  const std::string_view allowed = figure.tolerance ? "0123456789./ -+\xC2\xB1" : "0123456789./ -";
  const bool bare =
      !figure.text.empty() && figure.text.find_first_not_of(allowed) == std::string::npos;
  std::string text = bare ? figure.text : writePlain(figure.value, figure.unit);
  if (figure.tolerance && !bare) {
    const auto deviation = [&](Length value) {
      return (value < Length() ? " -" : " +") + writeDecimal(value.magnitude(), figure.unit);
    };
    text += deviation(figure.tolerance->upper) + deviation(figure.tolerance->lower);
  }
  if (figure.unit != shown) text += figure.unit == Unit::inch ? " in" : " mm";
  return text;
}

std::string stepText(const Step& step) {
  return atStep(step.size, step);
}

std::string atStep(Length length, const Step& step) {
  return showAtStep(length.rational(), step).text;
}

std::string presetText(const Coordinate& figure, Unit shown) {
  std::string text = signedText(figure);
  if (figure.rounding.isZero()) return text;
  if (!figure.exact) return text + " (rounded)";
  const Unit unit = endsIn(shown, figure.value) ? shown : Unit::millimetre;
  text += " (exactly " + writeDecimal(figure.value, unit);
  if (unit != shown) text += " mm";
  return text + ")";
}

}  // namespace inchwright
