#pragma once

#include <QString>
#include <algorithm>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "app/session/work.h"

namespace inchwright::app {

/// Hands at a desk, driven by a line a step:
///   at A B …   clicks on places; `on r1` on a dimension; `click X Y [PLACE]` on the print, inches
///   note TEXT  what stands in the strip when the next click comes
///   and what a key or button does, such as `read`, `axis y`, `part 1`, `back`, `undo`.
/// What is typed into the strip (`: TEXT`) is its user's own to enter.
class DrivenHands {
 public:
  explicit DrivenHands(Work& work) : work_(work) {}

  /// Whether there is such a step.
  bool step(const std::string& line) {
    std::istringstream in(line);
    const std::vector<std::string> words{std::istream_iterator<std::string>(in), {}};
    if (words.empty()) return false;
    if (words[0] == "at") {
      for (std::size_t i = 1; i < words.size(); ++i) work_.point({{}, words[i], {}, false});
    } else if (words[0] == "on" && words.size() > 1) {
      work_.point({{}, {}, words[1], false});
    } else if (words[0] == "click" && words.size() > 2) {
      const QPointF at(QString::fromStdString(words[1]).toDouble(),
                       QString::fromStdString(words[2]).toDouble());
      work_.point({at, words.size() > 3 ? words[3] : std::string(), {}, false, 0.03});
    } else if (words[0] == "note") {
      work_.noteTyped(QString::fromStdString(line.substr(std::min<std::size_t>(5, line.size()))));
    } else {
      const auto found = done_.find(words[0]);
      if (found == done_.end()) return false;
      found->second(words.size() > 1 ? words[1] : std::string());
    }
    return true;
  }

 private:
  using Done = std::map<std::string, std::function<void(const std::string&)>>;

  Done done() {
    const auto number = [](const std::string& text) { return std::atoi(text.c_str()); };
    return {
        {"look", [&](const auto&) { work_.look(); }},
        {"trace", [&](const auto& kind) { work_.trace(*featureKindNamed(kind)); }},
        {"centre_line", [&](const auto&) { work_.traceCentreLine(); }},
        {"read", [&](const auto&) { work_.read(); }},
        {"relate", [&](const auto& kind) { work_.relate(*understandingKindNamed(kind)); }},
        {"relate_all", [&](const auto&) { work_.relateAll(); }},
        {"zero", [&](const auto&) { work_.zero(); }},
        {"stack", [&](const auto&) { work_.stack(); }},
        {"reread", [&](const auto&) { work_.reread(); }},
        {"square_up", [&](const auto&) { work_.squareUp(); }},
        {"place_view", [&](const auto&) { work_.placeView(); }},
        {"turn_picture", [&](const auto&) { work_.turnPicture(); }},
        {"next_picture", [&](const auto&) { work_.nextPictureInFront(); }},
        {"axis", [&](const auto& axis) { work_.setAxis(*axisNamed(axis)); }},
        {"from_first", [&](const auto& on) { work_.setFromFirst(on == "on"); }},
        {"face", [&](const auto& face) { work_.desk().chooseFace(*faceNamed(face)); }},
        {"setup", [&, number](const auto& index) { work_.desk().chooseSetup(number(index)); }},
        {"part", [&, number](const auto& index) { work_.desk().choosePart(number(index)); }},
        {"back", [&](const auto&) { work_.back(); }},
        {"pass", [&](const auto&) { work_.pass(); }},
        {"undo", [&](const auto&) { work_.desk().undo(); }},
        {"redo", [&](const auto&) { work_.desk().redo(); }},
        {"accept",
         [&, number](const auto& which) {
           const auto& doubts = work_.desk().solution().doubts;
           const auto index = static_cast<std::size_t>(number(which));
           if (index >= doubts.size()) return;
           AcceptedDoubt accepted;
           accepted.key = doubts[index].key.text();
           accepted.about = doubts[index].about;
           work_.accept({accepted}, QStringLiteral("the doubt"));
         }},
    };
  }

  Work& work_;
  const Done done_ = done();
};

}  // namespace inchwright::app
