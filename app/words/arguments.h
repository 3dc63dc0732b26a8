#pragma once

#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace inchwright::app {

/// One option a word knows: `--part` with a value, `--json` without.
struct Option {
  std::string_view name;
  bool takesValue = false;
  bool repeats = false;  ///< may be given more than once: `Arguments::values`
};

/// What stood behind a word, sorted into options and the rest.
struct Arguments {
  std::map<std::string, std::string, std::less<>> options;
  std::vector<std::string> rest;
  std::map<std::string, std::vector<std::string>, std::less<>> repeated;

  /// All values of an option that repeats, in order.
  std::vector<std::string> values(std::string_view name) const;
  bool has(std::string_view name) const { return options.find(name) != options.end(); }
  std::optional<std::string> value(std::string_view name) const;
};

/// Sorts the arguments of a word. `--name value` and `--name=value` are alike; `--` ends the
/// options, so that a text may begin with a sign. A figure such as `-1/8` needs no `--`: only a
/// letter or a second dash behind the first makes an option. `--help` and `-h` are always known.
/// Errors: `badRequest` for an option that is unknown, given twice, lacks its value or has one too
/// many; `place` is the option.
Result<Arguments> sortArguments(std::span<const std::string> args,
                                std::initializer_list<Option> known);

}  // namespace inchwright::app
