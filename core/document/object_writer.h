#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/extra.h"

namespace inchwright {

/// Writes one JSON object member by member, on one line or one member a line.
class ObjectWriter {
 public:
  /// On one line.
  explicit ObjectWriter(std::string& out);
  /// One member a line; the brace itself stands `indent` blanks in.
  ObjectWriter(std::string& out, int indent);

  /// Appends a name and leaves the value to the caller.
  std::string& value(std::string_view name);
  void json(std::string_view name, std::string_view text);
  void text(std::string_view name, std::string_view text);
  /// Leaves the member out when it is empty.
  void textIfAny(std::string_view name, std::string_view text);
  void textsIfAny(std::string_view name, const std::vector<std::string>& texts);
  void whole(std::string_view name, int number);
  void flag(std::string_view name, bool on);
  /// As lettered; left out when there is none.
  void figure(std::string_view name, const std::optional<Lettered>& figure);
  void angle(std::string_view name, const std::optional<LetteredAngle>& angle);
  /// Behind the known members; a name that was written already is left out.
  void rest(const Extra& extra);
  /// Closes the brace. Nothing may be written afterwards.
  void close();

  bool empty() const { return names_.empty(); }

 private:
  std::string& out_;
  std::optional<int> indent_;
  std::vector<std::string_view> names_;
};

}  // namespace inchwright
