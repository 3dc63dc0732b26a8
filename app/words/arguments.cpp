#include "app/words/arguments.h"

#include <algorithm>

namespace inchwright::app {
namespace {

Error fault(std::string option, std::string text) {
  return {ErrorCode::badRequest, std::move(text), std::move(option)};
}

bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool looksLikeOption(std::string_view arg) {
  return arg.size() >= 2 && arg[0] == '-' && (arg[1] == '-' || isLetter(arg[1]));
}

}  // namespace

std::optional<std::string> Arguments::value(std::string_view name) const {
  const auto found = options.find(name);
  if (found == options.end()) return std::nullopt;
  return found->second;
}

std::vector<std::string> Arguments::values(std::string_view name) const {
  const auto found = repeated.find(name);
  return found == repeated.end() ? std::vector<std::string>() : found->second;
}

Result<Arguments> sortArguments(std::span<const std::string> args,
                                std::initializer_list<Option> known) {
  Arguments sorted;
  for (std::size_t i = 0; i < args.size(); ++i) {
    if (args[i] == "--") {
      sorted.rest.insert(sorted.rest.end(), args.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                         args.end());
      break;
    }
    if (!looksLikeOption(args[i])) {
      sorted.rest.push_back(args[i]);
      continue;
    }
    const std::size_t equals = args[i].find('=');
    const std::string name = args[i] == "-h" ? "--help" : args[i].substr(0, equals);
    if (name == "--help") {
      sorted.options["--help"];
      continue;
    }
    const auto option = std::find_if(known.begin(), known.end(),
                                     [&](const Option& one) { return one.name == name; });
    if (option == known.end()) {
      return fault(name, "no such option here; a text that begins with a dash goes behind --");
    }
    if (sorted.has(name)) return fault(name, "given twice");
    if (!option->takesValue && equals != std::string::npos) {
      return fault(name, "takes no value");
    }
    std::string value;
    if (option->takesValue && equals != std::string::npos) {
      value = args[i].substr(equals + 1);
    } else if (option->takesValue) {
      if (i + 1 == args.size()) return fault(name, "needs a value behind it");
      value = args[++i];
    }
    if (option->repeats) {
      sorted.repeated[name].push_back(std::move(value));
    } else {
      sorted.options.emplace(name, std::move(value));
    }
  }
  return sorted;
}

}  // namespace inchwright::app
