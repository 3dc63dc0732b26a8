#include "core/document/object_writer.h"

#include <algorithm>
#include <cstddef>

#include "core/document/json_string.h"

namespace inchwright {

ObjectWriter::ObjectWriter(std::string& out) : out_(out) {
  out_ += '{';
}

ObjectWriter::ObjectWriter(std::string& out, int indent) : out_(out), indent_(indent) {
  out_ += '{';
}

std::string& ObjectWriter::value(std::string_view name) {
  if (!names_.empty()) out_ += indent_ ? "," : ", ";
  if (indent_) {
    out_ += '\n';
    out_.append(static_cast<std::size_t>(*indent_) + 2, ' ');
  }
  names_.push_back(name);
  appendQuoted(out_, name);
  out_ += ": ";
  return out_;
}

void ObjectWriter::json(std::string_view name, std::string_view text) {
  value(name) += text;
}

void ObjectWriter::text(std::string_view name, std::string_view text) {
  appendQuoted(value(name), text);
}

void ObjectWriter::textIfAny(std::string_view name, std::string_view content) {
  if (!content.empty()) text(name, content);
}

void ObjectWriter::textsIfAny(std::string_view name, const std::vector<std::string>& texts) {
  if (texts.empty()) return;
  std::string& out = value(name);
  const char* before = "[";
  for (const std::string& one : texts) {
    out += before;
    before = ", ";
    appendQuoted(out, one);
  }
  out += ']';
}

void ObjectWriter::whole(std::string_view name, int number) {
  value(name) += std::to_string(number);
}

void ObjectWriter::flag(std::string_view name, bool on) {
  value(name) += on ? "true" : "false";
}

void ObjectWriter::figure(std::string_view name, const std::optional<Lettered>& figure) {
  if (figure) text(name, figure->text);
}

void ObjectWriter::angle(std::string_view name, const std::optional<LetteredAngle>& angle) {
  if (angle) text(name, angle->text);
}

void ObjectWriter::rest(const Extra& extra) {
  // Only the known names are looked through: there may be millions of unknown ones.
  const auto known = static_cast<std::ptrdiff_t>(names_.size());
  for (const UnknownMember& one : extra) {
    const auto end = names_.begin() + known;
    if (std::find(names_.begin(), end, one.name) == end) json(one.name, one.json);
  }
}

void ObjectWriter::close() {
  if (indent_ && !names_.empty()) {
    out_ += '\n';
    out_.append(static_cast<std::size_t>(*indent_), ' ');
  }
  out_ += '}';
}

}  // namespace inchwright
