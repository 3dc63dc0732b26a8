#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/apart.h"
#include "core/base/result.h"
#include "core/document/json_text.h"
#include "core/measure/angle.h"
#include "core/measure/lettered.h"
#include "core/part/extra.h"

namespace inchwright {

/// Where a value stands in the document: a step behind another. Becomes a pointer only on a fault.
/// Requires: `up` outlives it.
struct Where {
  const Where* up = nullptr;
  std::string_view name = {};
  std::size_t index = 0;

  std::string pointer() const;
};

/// The first fault of a document that is being read. Once there is one, readers do nothing more.
class Trouble {
 public:
  void report(const Where& where, std::string text, std::optional<std::size_t> at = std::nullopt);
  bool any() const { return first_.has_value(); }
  /// Requires: any().
  const Error& first() const { return *first_; }

 private:
  friend class ObjectReader;

  std::optional<Error> first_;
  /// Names asked for in vain by the readers at work, the innermost last.
  std::vector<std::string_view> lacking_;
};

/// Reads the members of one object by name, each at most once, and keeps what nobody asked for.
///
/// Names are literals: they are kept until the object is done with. Every `read` leaves its target
/// as it was when the member is absent; a member that is `null` or of the wrong type is reported.
class ObjectReader {
 public:
  /// Reports when `value` is no object. Requires: the arguments outlive the reader.
  ObjectReader(const JsonValue& value, const Where& where, Trouble& trouble);
  ~ObjectReader() { trouble_.lacking_.resize(firstLacking_); }
  ObjectReader(const ObjectReader&) = delete;
  ObjectReader& operator=(const ObjectReader&) = delete;

  bool has(std::string_view name) const;
  /// Whether the member is there and a string.
  bool isText(std::string_view name) const;
  /// Reports `what` at this object when the member is absent; true when it is there.
  bool require(std::string_view name, std::string_view what);
  /// Reports at the object itself.
  void report(std::string text) { trouble_.report(where_, std::move(text)); }
  void report(std::string_view name, std::string text,
              std::optional<std::size_t> at = std::nullopt);

  void read(std::string_view name, std::string& out);
  void read(std::string_view name, std::vector<std::string>& out);
  void read(std::string_view name, bool& out);
  void read(std::string_view name, int& out);
  /// A length as lettered; a figure that names no unit is in `bareUnit`.
  void read(std::string_view name, std::optional<Lettered>& out, Unit bareUnit);
  void read(std::string_view name, std::optional<LetteredAngle>& out);
  template <class Value, class... More>
  void read(std::string_view name, Apart<Value>& out, const More&... more) {
    std::optional<Value> value;
    read(name, value, more...);
    if (value) out = *std::move(value);
  }
  /// A member of any kind as JSON text on one line.
  void readJson(std::string_view name, std::string& out);

  /// One of the first `count` words of an enumeration; others are reported with the list of words.
  template <class Enum>
  void readWord(std::string_view name, std::optional<Enum>& out,
                std::optional<Enum> (*named)(std::string_view), int count) {
    const std::optional<std::string> word = textOf(name);
    if (!word) return;
    out = named(*word);
    if (out) return;
    std::string words;
    for (int i = 0; i < count; ++i) {
      words += (i == 0 ? "`" : ", `") + std::string(nameOf(static_cast<Enum>(i))) + "`";
    }
    report(name, "`" + shortened(*word) + "` is none of " + words);
  }
  template <class Enum>
  void readWord(std::string_view name, Enum& out, std::optional<Enum> (*named)(std::string_view),
                int count) {
    std::optional<Enum> word = out;
    readWord(name, word, named, count);
    if (word) out = *word;
  }

  /// Calls `item` for each value of an array, until there is trouble.
  using ItemAction = std::function<void(const JsonValue&, const Where&)>;
  void each(std::string_view name, const ItemAction& item);
  /// The same, or once for a value that stands alone: `"number"` for `["number"]`.
  void eachOrOne(std::string_view name, const ItemAction& item);
  /// Calls `object` with a reader of the member when it is there.
  void within(std::string_view name, const std::function<void(ObjectReader&)>& object);
  /// The text of a string member; marks it as read.
  std::optional<std::string> textOf(std::string_view name);

  /// What nobody asked for, in order, with what may have been meant by it. To be called last.
  Extra rest() const;

  static std::string shortened(std::string_view text);

 private:
  struct Member {
    JsonValue::Member json;
    bool asked = false;
  };

  /// The known member that an unknown one of this name is nearly spelt as; empty for none.
  std::string meantBy(std::string_view name) const;
  /// Null when absent or when there is trouble already.
  const JsonValue* find(std::string_view name);
  const JsonValue* findOf(std::string_view name, JsonKind kind, std::string_view wanted);

  const Where& where_;
  Trouble& trouble_;
  const std::size_t firstLacking_;
  std::vector<Member> members_;
};

}  // namespace inchwright
