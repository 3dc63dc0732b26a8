#pragma once

namespace inchwright {

/// One function object out of several, for `std::visit`: of a variant, each alternative goes to the
/// one that takes it. `Overloaded{[](int) { return 1; }, [](const auto&) { return 0; }}`.
template <class... Each>
struct Overloaded : Each... {
  using Each::operator()...;
};

template <class... Each>
Overloaded(Each...) -> Overloaded<Each...>;

}  // namespace inchwright
