#include "core/part/setup.h"

#include "core/part/name_table.h"

namespace inchwright {

Setup::Setup() = default;
Setup::Setup(const Setup& other) = default;
Setup::Setup(Setup&& other) noexcept = default;
Setup& Setup::operator=(const Setup& other) = default;
Setup& Setup::operator=(Setup&& other) noexcept = default;
Setup::~Setup() = default;
bool Setup::operator==(const Setup&) const = default;

namespace {

constexpr NameTable<2> kUnitNames{"in", "mm"};
constexpr NameTable<2> kCountsXNames{"right", "left"};
constexpr NameTable<2> kCountsYNames{"away", "towards"};
constexpr NameTable<3> kColumnNames{"knee", "round", "dovetail"};

}  // namespace

std::string_view nameOf(Unit unit) {
  return nameIn(kUnitNames, unit);
}
std::string_view nameOf(CountsX counts) {
  return nameIn(kCountsXNames, counts);
}
std::string_view nameOf(CountsY counts) {
  return nameIn(kCountsYNames, counts);
}

std::string_view nameOf(Column column) {
  return nameIn(kColumnNames, column);
}
std::optional<Column> columnNamed(std::string_view name) {
  return valueNamed<Column>(kColumnNames, name);
}

std::optional<Unit> unitNamed(std::string_view name) {
  return valueNamed<Unit>(kUnitNames, name);
}

std::optional<CountsX> countsXNamed(std::string_view name) {
  return valueNamed<CountsX>(kCountsXNames, name);
}

std::optional<CountsY> countsYNamed(std::string_view name) {
  return valueNamed<CountsY>(kCountsYNames, name);
}

const ZeroAlong* Setup::zeroAlong(Axis axis) const {
  for (const ZeroAlong& one : zero) {
    if (one.axis == axis) return &one;
  }
  return nullptr;
}

Length Setup::stockOn(Side side) const {
  const auto& allowance = stock[static_cast<std::size_t>(side)];
  return allowance ? allowance->value : Length();
}

}  // namespace inchwright
