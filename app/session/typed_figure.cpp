#include "app/session/typed_figure.h"

#include "core/measure/writing.h"

namespace inchwright::app {

Result<Lettered> readTyped(const std::string& text, Unit typed, Unit kept) {
  Result<Lettered> read = readLength(text, {typed});
  if (!read.ok() || typed == kept) return read;
  const std::string unit = typed == Unit::inch ? " in" : " mm";
  // As it was typed, where its unit is named; else with the unit behind; else as a plain figure.
  for (const std::string& form : {text, text + unit, writeDecimal(read->value, typed) + unit}) {
    Result<Lettered> again = readLength(form, {kept});
    if (again.ok() && again->value == read->value && again->tolerance == read->tolerance) {
      return again;
    }
  }
  return read;
}

}  // namespace inchwright::app
