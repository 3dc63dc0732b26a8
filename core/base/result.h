#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace inchwright {

/// What kind of thing went wrong; the text says the rest.
enum class ErrorCode {
  badText,      ///< a figure or word could not be read
  outOfRange,   ///< a value or an intermediate does not fit its exact type
  badDocument,  ///< a document breaks the rules of its format
  newerFormat,  ///< a document of a later version than this program knows
  tooLarge,     ///< a file or structure beyond the stated limits
  fileTrouble,  ///< the operating system refused to read or write
  notFound,     ///< an id, part or setup that is not there
  badRequest,   ///< a call that asks for something meaningless
  unsolvable,   ///< the data does not determine what was asked
};

/// A failure: what went wrong and what to do (`text`, one line, for people), and where.
struct Error {
  ErrorCode code = ErrorCode::badRequest;
  std::string text;
  /// Where: a JSON pointer, a feature or reading id, or a file name. May be empty.
  std::string place = {};
  /// Byte offset into the text that was read, where that applies.
  std::optional<std::size_t> at = std::nullopt;

  bool operator==(const Error&) const = default;
};

/// Either a value or the error that prevented it. No exception leaves a core function.
/// Requires: `value()` is called only when `ok()`, `error()` only when not.
template <class T>
class [[nodiscard]] Result {
 public:
  // Implicit on purpose: `return value;` and `return Error{...};` both read naturally.
  Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : held_(std::in_place_index<1>, std::move(error)) {}

  bool ok() const { return held_.index() == 0; }
  explicit operator bool() const { return ok(); }

  const T& value() const& { return std::get<0>(held_); }
  T& value() & { return std::get<0>(held_); }
  T&& value() && { return std::get<0>(std::move(held_)); }
  const T& operator*() const& { return value(); }
  T& operator*() & { return value(); }
  T&& operator*() && { return std::get<0>(std::move(held_)); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }

  const Error& error() const { return std::get<1>(held_); }

 private:
  std::variant<T, Error> held_;
};

/// The outcome of an action that yields nothing but its success.
struct Done {
  bool operator==(const Done&) const = default;
};

}  // namespace inchwright
