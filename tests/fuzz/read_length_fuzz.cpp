#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"

// Any bytes are read or refused in place; what was read is within its bounds and reads back.

namespace {

using namespace inchwright;

void require(bool holds) {
  if (!holds) std::abort();
}

void requirePlace(const Error& error, std::string_view text) {
  require(error.at.has_value() && *error.at <= text.size());
  require(!error.text.empty());
  require(error.code == ErrorCode::badText || error.code == ErrorCode::outOfRange);
}

void requireReadsBack(Length value, Unit unit) {
  const auto plain = readLength(writePlain(value, unit), ReadingOptions{unit});
  require(plain.ok() && plain->value == value);
  const auto decimal = readLength(writeDecimal(value, unit), ReadingOptions{unit});
  require(decimal.ok() && decimal->value == value);
}

void checkLength(std::string_view text, Unit print) {
  const auto read = readLength(text, ReadingOptions{print});
  if (!read) return requirePlace(read.error(), text);
  require(read->text == text);
  require(read->value.magnitude().ticks() < std::int64_t{1} << 62);
  require(read->places >= 0);
  require(read->symbol == SizeSymbol::none || read->value.ticks() > 0);
  if (read->tolerance) {
    require(!read->basic);
    require(read->tolerance->width().ticks() > 0);
    require(read->value.plus(read->tolerance->upper).has_value());
    require(read->value.plus(read->tolerance->lower).has_value());
  }
  requireReadsBack(read->value, Unit::inch);
  requireReadsBack(read->value, Unit::millimetre);
  const Shown shown = showAtStep(read->value.rational(), Step{});
  require(shown.value.ticks() - read->value.ticks() == shown.error.ticks());
  require(readLength(shown.text)->value == shown.value);
}

void checkAngle(std::string_view text) {
  const auto read = readAngle(text);
  if (!read) return requirePlace(read.error(), text);
  require(read->text == text);
  require(read->value <= Angle::degrees(360'000) && read->value >= Angle::degrees(-360'000));
  require(!read->plusMinus || read->plusMinus->microArcseconds() >= 0);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  checkLength(text, Unit::inch);
  checkLength(text, Unit::millimetre);
  checkAngle(text);
  return 0;
}
