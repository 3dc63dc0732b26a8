#include "core/seen/offered.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

namespace inchwright::seen {
namespace {

constexpr std::size_t kMostChoices = 3;
constexpr double kLaneStep = 0.05;  // inches: what lies nearer together is one lane

/// Along each chain: axis by axis, lane by lane, from the lower end.
auto placeInOrder(const ReadingOffer& r) {
  const bool x = r.kind == OfferedReading::alongX;
  const double across = x ? r.from.y : r.from.x, along = x ? r.from.x : r.from.y;
  return std::tuple(r.view, r.kind, std::lround(across / kLaneStep), along);
}

}  // namespace

PutReading putReading(const ReadingOffer& offer, bool blind) {
  PutReading out;
  if (offer.candidates.empty()) return out;
  const Witnesses& w = offer.witnesses;
  const Candidate& first = offer.candidates.front();
  if (w.ready()) {
    out.blind = blind;
    out.how = blind ? Put::typed : Put::ready;
    if (!blind) out.strip = first.text;
  } else if (w.plain) {
    out.how = Put::asked;
    out.asked = first.text;
  } else if (w.unsure && w.scale) {
    out.how = Put::choice;
    std::vector<std::int64_t> had;
    for (const Candidate& c : offer.candidates) {
      if (out.choices.size() == kMostChoices) break;
      if (std::find(had.begin(), had.end(), c.ticks) != had.end()) continue;
      had.push_back(c.ticks);
      out.choices.push_back(c.text);
    }
  }
  return out;
}

Offered::Offered(Offers offers, Time now) : offers_(std::move(offers)) {
  order_.resize(offers_.readings.size());
  std::iota(order_.begin(), order_.end(), std::size_t{0});
  std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
    return placeInOrder(offers_.readings[a]) < placeInOrder(offers_.readings[b]);
  });
  int ready = 0;
  for (const std::size_t i : order_) {
    const bool one = offers_.readings[i].witnesses.ready();
    ready += one;
    blind_.push_back(one && ready % kBlindEvery == 0);
  }
  state_.assign(count(), State::open);
  lightNext(0, now);
}

const FeatureOffer* Offered::feature() const {
  return lit_ && *lit_ < offers_.features.size() ? &offers_.features[*lit_] : nullptr;
}

const ReadingOffer* Offered::reading() const {
  if (!lit_ || *lit_ < offers_.features.size()) return nullptr;
  return &readingAt(*lit_);
}

const ReadingOffer& Offered::readingAt(std::size_t one) const {
  return offers_.readings[order_[one - offers_.features.size()]];
}

void Offered::light(std::size_t one, Time now) {
  if (lit_ != one && isOpen(one)) lightNext(one, now);
}

void Offered::confirmAlso(std::size_t one) {
  if (!isOpen(one) || lit_ == one) return;
  state_[one] = State::confirmed;
  done_.push_back(one);
}

PutReading Offered::put() const {
  return putReading(*reading(), blind_[*lit_ - offers_.features.size()]);
}

void Offered::lightNext(std::size_t from, Time now) {
  lit_.reset();
  shown_ = now;
  for (std::size_t i = 0; i < count() && !lit_; ++i) {
    const std::size_t at = (from + i) % count();
    if (state_[at] == State::open) lit_ = at;
  }
}

void Offered::settle(State state, Time now) {
  state_[*lit_] = state;
  done_.push_back(*lit_);
  lightNext(*lit_ + 1, now);
}

bool Offered::confirm(Time now, const std::string& figure) {
  if (!lit_ || !hears(now)) return false;
  if (reading() != nullptr && figure.empty()) return false;
  settle(State::confirmed, now);
  return true;
}

void Offered::drop(Time now) {
  if (lit_) settle(State::dropped, now);
}

void Offered::pass(Time now) {
  if (lit_) lightNext(*lit_ + 1, now);
}

bool Offered::undo(Time now) {
  if (done_.empty()) return false;
  state_[done_.back()] = State::open;
  lightNext(done_.back(), now);
  done_.pop_back();
  return true;
}

void Offered::reopen(std::size_t one, Time now) {
  if (one >= count() || state_[one] != State::confirmed) return;
  state_[one] = State::open;
  std::erase(done_, one);
  lightNext(one, now);
}

int Offered::open() const {
  return static_cast<int>(std::count(state_.begin(), state_.end(), State::open));
}

int Offered::confirmed() const {
  return static_cast<int>(std::count(state_.begin(), state_.end(), State::confirmed));
}

std::string Offered::offeredOf(const ReadingOffer& offer, const std::string& figure) {
  const bool first = !offer.candidates.empty() && offer.candidates.front().text == figure;
  return first ? offer.witnesses.letters() : std::string();
}

}  // namespace inchwright::seen
