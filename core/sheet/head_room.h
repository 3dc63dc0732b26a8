#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <optional>
#include <utility>

namespace inchwright {

/// How high the heads of numbered pages are, kept while pages are laid out and how many there will
/// be is not known yet. All figures are equally wide, so that a head is as high as any other whose
/// numbers have as many figures; the first page's may differ from the others.
class HeadRoom {
 public:
  /// Of a page, counted from 1, of so many.
  using HeightOf = std::function<double(std::size_t page, std::size_t pages)>;

  /// Room for the numbers of up to `mostPages` pages.
  HeadRoom(HeightOf heightOf, std::size_t mostPages)
      : heightOf_(std::move(heightOf)), mostPages_(mostPages) {}

  /// On a page, counted from 0.
  double on(std::size_t index) {
    std::optional<double>& height = heights_[index == 0 ? 0 : figuresOf(index + 1)];
    if (!height) height = heightOf_(index + 1, mostPages_);
    return *height;
  }

  /// Whether the heads of so many pages stand in that room.
  bool holds(std::size_t pages) {
    if (pages <= mostPages_) return true;
    if (heightOf_(1, pages) > on(0)) return false;
    for (std::size_t page = 2; page <= pages; page = page == 2 ? 10 : page * 10) {
      if (heightOf_(page, pages) > on(page - 1)) return false;
    }
    return true;
  }

 private:
  static std::size_t figuresOf(std::size_t number) {
    std::size_t figures = 1;
    for (; number >= 10; number /= 10) ++figures;
    return figures;
  }

  HeightOf heightOf_;
  std::size_t mostPages_;
  std::array<std::optional<double>, 21> heights_;
};

/// Lays pages out with room for heads that hold their numbers: at first as if there were nine at
/// most, and anew with room for more only where that makes a head higher. `lay` takes the
/// `HeadRoom`, `countOf` tells how many pages it made.
template <class Lay, class CountOf>
auto layNumbered(const HeadRoom::HeightOf& heightOf, const Lay& lay, const CountOf& countOf) {
  for (std::size_t most = 9;; most = most * 10 + 9) {
    HeadRoom room(heightOf, most);
    auto laid = lay(room);
    if (room.holds(countOf(laid))) return laid;
  }
}

}  // namespace inchwright
