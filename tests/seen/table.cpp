// table [--failures] [--nets FILE] FOLDER...: what would be offered on the prints drawn into each
// folder, against the truth about them, one block a folder.

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <map>
#include <optional>

#include "tests/seen/print.h"

namespace inchwright::seen {
namespace {

using nlohmann::json;

struct Count {
  int all = 0;
  int hit = 0;
  void add(bool right) { ++all, hit += right; }
  double percent() const { return all > 0 ? 100.0 * hit / all : 0; }
};

/// Features of one kind: those there are, those of them that are offered, and that one Enter takes.
struct Drawn {
  Count found, ready;
  int wrong = 0;       ///< offered where nothing of the kind is
  int wrongReady = 0;  ///< and for one Enter
};

const char* const kFeatures[] = {"hole", "edge", "slot", "ring", "row", "round", "line", "arc"};

/// One manner's figures.
struct Tally {
  int prints = 0;
  std::array<Drawn, std::size(kFeatures)> drawn;
  Count lines, first, three, ready, choice, notes, radii, rings;
  int falseLines = 0;
  int wrongReady = 0, readyInAll = 0, falseReady = 0, plainOnly = 0, placed = 0;
  int misprints = 0, misprintsFound = 0, misprintsReady = 0, misprintsCorrected = 0,
      misprintsAsked = 0;
  std::map<std::string, std::pair<Count, Count>> by;  // lines found, right first
  double seconds = 0, megapixels = 0;
};

double gap(const json& p, PlanePoint q) {
  return std::hypot(p[0].get<double>() - q.x, p[1].get<double>() - q.y);
}

double tolerance(const DrawnPrint& print, double sheet) {
  return sheet / print.scale() + 0.01;
}

double strayBeyond(const DrawnPrint& print, PlanePoint p);

/// Whether an offer is what is drawn: holes and edges to a 64th, but for what other views show.
bool isDrawn(const DrawnPrint& print, const json& f, const FeatureOffer& o) {
  switch (o.kind) {
    case OfferedFeature::hole:
      return std::abs(f["at"][0].get<double>() - o.at.x) <= 1.0 / 64 &&
             std::abs(f["at"][1].get<double>() - o.at.y) <= 1.0 / 64;
    case OfferedFeature::edge: {
      const int own = f["axis"] == "x" ? 0 : 1;
      const double at = f["from"][own], a = f["from"][1 - own], b = f["to"][1 - own];
      const double mine = own == 0 ? o.at.x : o.at.y, along = own == 0 ? o.at.y : o.at.x;
      return o.alongX == (own == 0) && std::abs(at - mine) <= 1.0 / 64 + strayBeyond(print, o.at) &&
             along > std::min(a, b) && along < std::max(a, b);
    }
    case OfferedFeature::slot: {
      const double near = tolerance(print, 0.03);
      return std::min(gap(f["from"], o.from) + gap(f["to"], o.to),
                      gap(f["from"], o.to) + gap(f["to"], o.from)) < 2 * near;
    }
    case OfferedFeature::ring:
      return gap(f["at"], o.at) <= 1.0 / 32 && f["count"] == o.count;
    case OfferedFeature::row:
      return gap(f["from"], o.from) <= 1.0 / 64 && gap(f["to"], o.to) <= 1.0 / 64 &&
             f["count"] == o.count;
    case OfferedFeature::round:
      return gap(f["at"], o.at) <= tolerance(print, 0.03);
    case OfferedFeature::line:
    case OfferedFeature::arc: {
      const bool arc = o.kind == OfferedFeature::arc;
      const double near = tolerance(print, 0.03), radius = arc ? f["r"].get<double>() : 0;
      return std::min(std::max(gap(f["from"], o.from), gap(f["to"], o.to)),
                      std::max(gap(f["from"], o.to), gap(f["to"], o.from))) < 2 * near &&
             (!arc || (std::abs(o.drawnRadius - radius) < 0.1 * radius + near &&
                       gap(f["at"], o.at) < 0.1 * radius + 2 * near));
    }
  }
  return false;
}

void countFeatures(const DrawnPrint& print, const Offers& offers, bool show, Tally& t) {
  std::vector<bool> used(offers.features.size());
  const auto isOf = [](const FeatureOffer& o, std::size_t k) {
    constexpr OfferedFeature kOf[] = {
        OfferedFeature::hole, OfferedFeature::edge,  OfferedFeature::slot, OfferedFeature::ring,
        OfferedFeature::row,  OfferedFeature::round, OfferedFeature::line, OfferedFeature::arc};
    return o.kind == kOf[k];
  };
  for (const json& f : print.truth["features"]) {
    const auto name = std::find(std::begin(kFeatures), std::end(kFeatures), f["kind"]);
    if (name == std::end(kFeatures)) continue;
    const auto kind = static_cast<std::size_t>(name - std::begin(kFeatures));
    bool hit = false, ready = false;
    for (std::size_t i = 0; i < offers.features.size() && !hit; ++i) {
      const FeatureOffer& o = offers.features[i];
      if (used[i] || !isOf(o, kind) || !isDrawn(print, f, o)) continue;
      used[i] = hit = true;
      ready = o.ready;
    }
    // What another view shows is no feature of the face, but it is drawn there.
    if (f.contains("other_view")) continue;
    t.drawn[kind].found.add(hit);
    t.drawn[kind].ready.add(ready);
    if (show && !ready)
      std::printf("    %s %s %s %s\n", print.name.c_str(), hit ? "not ready" : "missed", *name,
                  f.value("at", f.value("from", json())).dump().c_str());
  }
  for (std::size_t i = 0; i < offers.features.size(); ++i) {
    const FeatureOffer& o = offers.features[i];
    for (std::size_t k = 0; k < t.drawn.size(); ++k) {
      if (used[i] || !isOf(o, k)) continue;
      ++t.drawn[k].wrong;
      t.drawn[k].wrongReady += o.ready;
      if (show)
        std::printf("    %s false %s%s at %.3f %.3f, radius %.3f, view %d, sure %.2f\n",
                    print.name.c_str(), o.ready ? "READY " : "", kFeatures[k], o.at.x, o.at.y,
                    o.drawnRadius, o.view, o.sure);
    }
  }
}

const char* const kKinds[] = {"x", "y", "centres", "angle"};

bool sameText(std::string a, std::string b) {
  const auto plain = [](std::string& s) {
    std::erase_if(s, [](char c) { return c == ' '; });
    for (auto& c : s) {
      if (c == '|') c = '/';
    }
  };
  plain(a);
  plain(b);
  return a == b;
}

/// Whether a candidate says what is lettered: its value, and its tolerance where one is lettered.
bool says(const Candidate& c, const json& r) {
  if (r["kind"] == "angle") return c.ticks == r["degrees"].get<std::int64_t>() * 3'600'000'000;
  const std::string text = r["text"];
  if (text.find("±") != std::string::npos || text.find('|') != std::string::npos)
    return sameText(c.text, text);
  return c.ticks == r["ticks"].get<std::int64_t>();
}

/// How far a place beyond the four corners by which a print is squared up may lie astray: they are
/// marked to a pixel or so, and what is carried on from them strays with the way.
double strayBeyond(const DrawnPrint& print, PlanePoint p) {
  double beyond = 0;
  for (const int k : {0, 1}) {
    double low = 1e9, high = -1e9;
    for (const json& corner : print.truth["corners"]) {
      low = std::min(low, corner[k].get<double>());
      high = std::max(high, corner[k].get<double>());
    }
    const double at = k == 0 ? p.x : p.y;
    beyond = std::max({beyond, low - at, at - high});
  }
  return 0.015 * beyond;
}

bool onLine(const DrawnPrint& print, const json& r, const ReadingOffer& o) {
  if (r["kind"] != kKinds[static_cast<int>(o.kind)]) return false;
  const double near = tolerance(print, 0.03), across = tolerance(print, 0.08);
  if (r["kind"] == "x" || r["kind"] == "y") {
    const int a = r["kind"] == "x" ? 0 : 1;
    const auto part = [&](PlanePoint p, int k) { return k == 0 ? p.x : p.y; };
    const double from = r["from"][a].get<double>() - part(o.from, a),
                 to = r["to"][a].get<double>() - part(o.to, a);
    const double astray = strayBeyond(print, o.from);
    return std::abs(from - to) < 2 * near && std::abs(from) < near + astray &&
           std::abs(to) < near + astray &&
           std::abs(r["from"][1 - a].get<double>() - part(o.from, 1 - a)) < across + astray;
  }
  const double reach = r["kind"] == "angle" ? 3 * across : 2 * near;
  return gap(r["from"], o.from) < reach && (r["kind"] == "angle" || gap(r["to"], o.to) < reach);
}

void countReading(const DrawnPrint& print, const json& r, const ReadingOffer* o, bool show,
                  Tally& t) {
  const bool right = o != nullptr && !o->candidates.empty() && says(o->candidates.front(), r);
  if (show && (!right || !o->witnesses.ready())) {
    std::printf("    %s %s %s%s%s: %s%s", print.name.c_str(), r["kind"].get<std::string>().c_str(),
                r["text"].get<std::string>().c_str(), r["outside"] ? " outside" : "",
                r["beside"] ? " beside" : "",
                o == nullptr            ? "no line"
                : o->candidates.empty() ? "no figure"
                : right                 ? "right "
                                        : "",
                o == nullptr ? "" : o->witnesses.letters().c_str());
    for (const Candidate& c : o == nullptr ? std::vector<Candidate>() : o->candidates)
      std::printf("; %s (glyphs %.2f, off %.1f)", c.text.c_str(), c.glyphs, c.scale);
    std::printf("\n");
  }
  if (r["misprint"]) {
    ++t.misprints;
    if (o == nullptr || o->candidates.empty()) return;
    ++t.misprintsFound;
    t.misprintsReady += o->witnesses.ready();
    t.misprintsCorrected += !right && o->witnesses.scale;
    t.misprintsAsked += right && o->witnesses.plain && !o->witnesses.scale;
    return;
  }
  t.lines.add(o != nullptr);
  t.first.add(right);
  const auto& style = print.truth["style"];
  const bool pointed = style["head"] == "filled" || style["head"] == "open";
  for (const std::string& key :
       {std::string("form ") + style["form"].get<std::string>(),
        std::string("head ") + style["head"].get<std::string>(),
        std::string(r["outside"] ? "arrows outside"
                    : pointed    ? "arrows inside"
                                 : "ticks and dots"),
        std::string(style["clears"] ? "figures clear" : "figures run through"),
        std::string("kind ") +
            (r["kind"] == "x" || r["kind"] == "y" ? "axis" : r["kind"].get<std::string>()),
        std::string(style["broken"] ? "line broken" : "line whole"),
        std::string(r["text"].get<std::string>().find("±") != std::string::npos   ? "with tolerance"
                    : r["text"].get<std::string>().find('|') != std::string::npos ? "limits"
                                                                                  : "plain")}) {
    t.by[key].first.add(o != nullptr);
    t.by[key].second.add(right);
  }
  const bool ready = o != nullptr && o->witnesses.ready();
  t.ready.add(ready && right);
  if (ready && !right) {
    ++t.wrongReady;
    std::printf("    WRONG READY %s: %s for %s\n", print.name.c_str(),
                o->candidates.front().text.c_str(), r["text"].get<std::string>().c_str());
  }
  t.readyInAll += ready;
  if (o == nullptr) return;
  t.plainOnly += o->witnesses.plain && !o->witnesses.scale;
  if (o->witnesses.unsure && o->witnesses.scale) {
    bool among = false;
    for (std::size_t i = 0; i < o->candidates.size() && i < 3; ++i)
      among = among || says(o->candidates[i], r);
    t.choice.add(among);
  }
}

void countReadings(const DrawnPrint& print, const Offers& offers, bool show, Tally& t) {
  std::vector<bool> used(offers.readings.size());
  for (const json& r : print.truth["readings"]) {
    const ReadingOffer* hit = nullptr;
    for (std::size_t i = 0; i < offers.readings.size() && hit == nullptr; ++i) {
      if (used[i] || !onLine(print, r, offers.readings[i])) continue;
      used[i] = true;
      hit = &offers.readings[i];
    }
    countReading(print, r, hit, show, t);
  }
  for (std::size_t i = 0; i < used.size(); ++i) {
    if (used[i]) continue;
    ++t.falseLines;
    const ReadingOffer& o = offers.readings[i];
    if (show) {
      std::printf("    %s false line %d (%.2f %.2f) (%.2f %.2f): %s %s\n", print.name.c_str(),
                  static_cast<int>(o.kind), o.from.x, o.from.y, o.to.x, o.to.y,
                  o.candidates.empty() ? "" : o.candidates.front().text.c_str(),
                  o.witnesses.letters().c_str());
    }
    if (!o.witnesses.ready()) continue;
    ++t.falseReady;
    std::printf("    FALSE READY %s: %s\n", print.name.c_str(), o.candidates.front().text.c_str());
  }
}

void countNotes(const DrawnPrint& print, const json& notes, OfferedFeature kind,
                const Offers& offers, bool show, Count& found) {
  for (const json& n : notes) {
    bool hit = false;
    for (const FeatureOffer& o : offers.features) {
      if (o.kind != kind || gap(n["at"], o.at) > tolerance(print, 0.03)) continue;
      hit = hit || (!o.size.empty() && o.sizeTicks == n["ticks"].get<std::int64_t>());
      if (!hit && o.sizeWitnesses.ready())
        std::printf("    WRONG NOTE %s: %s for %s\n", print.name.c_str(), o.size.c_str(),
                    n["text"].get<std::string>().c_str());
    }
    found.add(hit);
    if (show && !hit)
      std::printf("    %s no size from %s\n", print.name.c_str(), n["text"].dump().c_str());
  }
}

/// Rings with the size and the pitch circle that their notes letter.
void countRings(const DrawnPrint& print, const Offers& offers, bool show, Count& found) {
  for (const json& n : print.truth.value("ring_notes", json::array())) {
    bool hit = false;
    for (const FeatureOffer& o : offers.features) {
      if (o.kind != OfferedFeature::ring || gap(n["at"], o.at) > tolerance(print, 0.03)) continue;
      const bool right = sameText(o.size, n["size"]) && sameText(o.pcd, n["pcd"]);
      hit = hit || right;
      if (!right && o.sizeWitnesses.ready() && o.pcdWitnesses.ready())
        std::printf("    WRONG RING %s: %s on %s for %s\n", print.name.c_str(), o.size.c_str(),
                    o.pcd.c_str(), n["text"].get<std::string>().c_str());
    }
    found.add(hit);
    if (show && !hit)
      std::printf("    %s no ring from %s\n", print.name.c_str(), n["text"].dump().c_str());
  }
}

void show(const std::string& name, const Tally& t) {
  std::printf("%-12s %d prints, %d readings, %.2f s each, %.2f s a megapixel\n", name.c_str(),
              t.prints, t.lines.all, t.seconds / std::max(1, t.prints),
              t.seconds / std::max(0.1, t.megapixels));
  for (std::size_t k = 0; k < t.drawn.size(); ++k) {
    const Drawn& d = t.drawn[k];
    if (d.found.all + d.wrong == 0) continue;
    std::printf("  %ss %5.1f %% of %d, ready %5.1f %%; false %.2f a print, ready %.2f\n",
                kFeatures[k], d.found.percent(), d.found.all, d.ready.percent(),
                double(d.wrong) / std::max(1, t.prints),
                double(d.wrongReady) / std::max(1, t.prints));
  }
  std::printf("  sizes from notes %5.1f %% of %d, radii %5.1f %% of %d, rings %5.1f %% of %d\n",
              t.notes.percent(), t.notes.all, t.radii.percent(), t.radii.all, t.rings.percent(),
              t.rings.all);
  std::printf("  lines found    %5.1f %%, of those offered true %5.1f %%\n", t.lines.percent(),
              100.0 * t.lines.hit / std::max(1, t.lines.hit + t.falseLines));
  std::printf("  right first    %5.1f %%; choice of few right %5.1f %% of %d; asked about %d\n",
              t.first.percent(), t.choice.percent(), t.choice.all, t.plainOnly);
  std::printf("  ready for Enter %4.1f %%; wrong among %d ready: %d; ready where no line is: %d\n",
              t.ready.percent(), t.readyInAll, t.wrongReady, t.falseReady);
  if (t.misprints > 0) {
    std::printf("  misprints      %d, found %d, ready %d, put right %d, asked about %d\n",
                t.misprints, t.misprintsFound, t.misprintsReady, t.misprintsCorrected,
                t.misprintsAsked);
  }
  for (const auto& [key, c] : t.by)
    std::printf("    %-22s lines %5.1f %%  first %5.1f %%  of %d\n", key.c_str(), c.first.percent(),
                c.second.percent(), c.first.all);
  std::fflush(stdout);
}

int run(int count, char** words) {
  bool failures = false;
  int wrong = 0;
  std::optional<Nets> nets;
  for (int i = 1; i < count; ++i) {
    if (std::strcmp(words[i], "--failures") == 0) {
      failures = true;
      continue;
    }
    if (std::strcmp(words[i], "--nets") == 0 && i + 1 < count) {
      std::ifstream file(words[++i], std::ios::binary);
      std::stringstream bytes;
      bytes << file.rdbuf();
      nets = netsFrom(bytes.str());
      continue;
    }
    std::vector<std::string> stems;
    for (const auto& entry : std::filesystem::directory_iterator(words[i])) {
      if (entry.path().extension() == ".pgm")
        stems.push_back((entry.path().parent_path() / entry.path().stem()).string());
    }
    std::sort(stems.begin(), stems.end());
    Tally t;
    for (const std::string& stem : stems) {
      const DrawnPrint print = readPrint(stem);
      Options options;
      options.unit = print.unit();
      options.nets = nets ? &*nets : nullptr;
      const auto begun = std::chrono::steady_clock::now();
      const auto offers = offer(print.picture, print.pixelToInches, options);
      t.seconds += std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
      t.megapixels += double(print.picture.width) * print.picture.height / 1e6;
      ++t.prints;
      if (!offers) {
        std::printf("%s: %s\n", stem.c_str(), offers.error().text.c_str());
        continue;
      }
      if (failures) {
        const double density = densityOf(print.picture, print.pixelToInches);
        std::printf("  %s: capitals %.1f pixels, truly %.1f\n", stem.c_str(), offers->lettering,
                    print.capitals() * density);
      }
      countFeatures(print, *offers, failures, t);
      countReadings(print, *offers, failures, t);
      countNotes(print, print.truth["notes"], OfferedFeature::hole, *offers, failures, t.notes);
      countNotes(print, print.truth.value("radii", json::array()), OfferedFeature::round, *offers,
                 failures, t.radii);
      countRings(print, *offers, failures, t.rings);
    }
    show(std::filesystem::path(words[i]).filename().string(), t);
    wrong += t.wrongReady + t.falseReady + t.misprintsReady + t.misprintsCorrected;
  }
  return wrong > 0 ? 1 : 0;
}

}  // namespace
}  // namespace inchwright::seen

int main(int count, char** words) {
  return inchwright::seen::run(count, words);
}
