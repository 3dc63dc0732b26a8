#pragma once

#include <memory>
#include <optional>
#include <utility>

namespace inchwright {

/// An optional value that is kept apart from what it belongs to, for members that few have: a hole
/// without a counterbore carries a pointer for it and not the hundred bytes of a figure, so that
/// whatever goes over all features reads half as much.
///
/// A value, as `std::optional` is: copied with what it holds, compared by it; and it is one
/// wherever one is only read.
template <class T>
class Apart {
 public:
  using Held = std::optional<T>;

  Apart() = default;
  Apart(std::nullopt_t) {}
  Apart(T value) : held_(std::make_unique<Held>(std::move(value))) {}
  Apart(Held value) {
    if (value) held_ = std::make_unique<Held>(std::move(value));
  }
  Apart(const Apart& other) : Apart(other.held()) {}
  Apart(Apart&& other) noexcept = default;
  Apart& operator=(const Apart& other) { return *this = Apart(other); }
  Apart& operator=(Apart&& other) noexcept = default;
  ~Apart() = default;

  const Held& held() const {
    static const Held kNothing;
    return held_ ? *held_ : kNothing;
  }
  operator const Held&() const { return held(); }

  explicit operator bool() const { return held_ != nullptr; }
  bool has_value() const { return held_ != nullptr; }
  void reset() { held_.reset(); }

  // Requires: it holds a value.
  const T& operator*() const { return **held_; }
  T& operator*() { return **held_; }
  const T* operator->() const { return &**held_; }
  T* operator->() { return &**held_; }

  friend bool operator==(const Apart& a, const Apart& b) { return a.held() == b.held(); }

 private:
  std::unique_ptr<Held> held_;  ///< never one without a value
};

}  // namespace inchwright
