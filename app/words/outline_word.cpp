#include <cmath>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/words.h"
#include "core/place/part_outline.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kOutlineHelp =
    R"(inchwright outline FILE [--part P] [--face F] [--unit in|mm] [--step STEP] [--json]

The outlines of the work: every corner and touching point, the centre and radius of every arc,
how long, how wide, what area, and how thick the metal is beside each hole. Coordinates run
along the face's own axes as it is seen, from the outer sides at the lower ends.

  --part P       only the part of that name
  --face F       only that face: top, bottom, front, back, left or right
  --unit in|mm   the unit of the figures, else the machine's
  --step STEP    what they are rounded to, else the machine's step
  --json         one JSON object instead of lines

Exit status: 0 fine; 1 a face has no outline, one does not close, or a hole breaks out that does
not say that it should; 2 the words or the file could not be used.
)";

std::int64_t ticksOf(double inches) {
  return std::llround(inches * static_cast<double>(Length::kTicksPerInch));
}

// Lengths and points of one answer at the step it is told in.
class Told {
 public:
  explicit Told(Step step) : step_(std::move(step)) {}

  std::string length(double inches) const {
    return showAtStep(Rational(ticksOf(inches)), step_).text;
  }
  std::string area(double squareInches) const {
    const double unit = step_.unit == Unit::inch ? 1 : 25.4 * 25.4;
    // Six decimals with a point, whatever the locale.
    const auto millionths = std::llround(squareInches * unit * 1e6);
    std::string digits = std::to_string(std::abs(millionths));
    if (digits.size() < 7) digits.insert(0, 7 - digits.size(), '0');
    return (millionths < 0 ? "-" : "") + digits.insert(digits.size() - 6, ".");
  }
  void put(Json& entry, const char* name, std::optional<double> inches) const {
    entry[name] = inches ? Json(length(*inches)) : Json();
    entry[std::string(name) + "_ticks"] = inches ? Json(ticksOf(*inches)) : Json();
  }
  void put(Json& entry, const char* name, std::optional<PlanePoint> p) const {
    entry[name] = p ? Json{length(p->x), length(p->y)} : Json();
    entry[std::string(name) + "_ticks"] = p ? Json{ticksOf(p->x), ticksOf(p->y)} : Json();
  }

 private:
  Step step_;
};

Json asJson(const OutlinePiece& piece, const Told& told) {
  Json entry{{"id", piece.id}, {"kind", nameOf(piece.kind)}};
  const auto& path = piece.path;
  const bool hasEnds = path && !path->isWhole;
  told.put(entry, "start", hasEnds ? std::optional(path->start) : std::nullopt);
  told.put(entry, "end", hasEnds ? std::optional(path->end) : std::nullopt);
  const bool isRound = path && path->circle;
  told.put(entry, "centre", isRound ? std::optional(path->circle->centre) : std::nullopt);
  told.put(entry, "radius", isRound ? std::optional(path->circle->radius) : std::nullopt);
  entry["sense"] =
      isRound ? Json(nameOf(path->sense > 0 ? Sense::anticlockwise : Sense::clockwise)) : Json();
  return entry;
}

Json asJson(const std::string& part, const FaceOutlines& face, const Outline& outline,
            const Told& told) {
  Json entry{{"part", part},
             {"face", nameOf(outline.face)},
             {"inner", outline.isInner},
             {"closed", outline.isClosed},
             {"from", outline.from},
             {"by_itself", outline.byItself},
             {"follows", Json::array()}};
  for (const OutlinePiece& piece : outline.pieces) entry["follows"].push_back(asJson(piece, told));
  if (outline.isClosed) {
    const auto [low, high] = outline.extents();
    // Two lists of two texts would be taken for an object.
    entry["extents"] = Json::array({Json::array({told.length(low.x), told.length(low.y)}),
                                    Json::array({told.length(high.x), told.length(high.y)})});
    entry["extents_ticks"] = Json::array({Json::array({ticksOf(low.x), ticksOf(low.y)}),
                                          Json::array({ticksOf(high.x), ticksOf(high.y)})});
    entry["area"] = told.area(outline.area());
  } else {
    entry["extents"] = entry["extents_ticks"] = entry["area"] = Json();
  }
  entry["thinnest"] = Json::array();
  for (const Wall& wall : face.walls) {
    if (outline.isInner) break;
    Json one{{"place", wall.place}};
    told.put(one, "wall", wall.wall);
    one["beside"] = wall.beside;
    entry["thinnest"].push_back(std::move(one));
  }
  return entry;
}

void print(const std::string& part, const FaceOutlines& face, const Outline& outline,
           const Told& told, const Streams& streams) {
  streams.out << toned(streams, Tone::heading, oneLine(part)) << ", " << nameOf(outline.face)
              << (outline.isInner ? ", inside" : "") << ", from " << oneLine(outline.from[0])
              << " and " << oneLine(outline.from[1]) << '\n';
  std::vector<std::vector<std::string>> rows{
      {"", "", "from X", "Y", "to X", "Y", "centre X", "Y", "radius", ""}};
  for (const OutlinePiece& piece : outline.pieces) {
    std::vector<std::string> row{oneLine(piece.id), std::string(nameOf(piece.kind))};
    const auto& path = piece.path;
    const auto point = [&](bool is, PlanePoint p) {
      row.push_back(is ? told.length(p.x) : "");
      row.push_back(is ? told.length(p.y) : "");
    };
    point(path && !path->isWhole, path ? path->start : PlanePoint{});
    point(path && !path->isWhole, path ? path->end : PlanePoint{});
    const bool isRound = path && path->circle;
    point(isRound, isRound ? path->circle->centre : PlanePoint{});
    row.push_back(isRound ? told.length(path->circle->radius) : "");
    row.push_back(!path                        ? "does not meet its neighbours"
                  : isRound && path->sense < 0 ? "hollow"
                                               : "");
    rows.push_back(std::move(row));
  }
  using enum Justify;
  for (const std::string& line :
       alignedRows(rows, {left, left, right, right, right, right, right, right, right, left})) {
    streams.out << "  " << line << '\n';
  }
  if (!outline.isClosed) {
    streams.out << toned(streams, Tone::doubt, "  it does not close") << '\n';
    return;
  }
  const auto [low, high] = outline.extents();
  streams.out << "  from " << told.length(low.x) << ", " << told.length(low.y) << " to "
              << told.length(high.x) << ", " << told.length(high.y) << ", area "
              << told.area(outline.area()) << '\n';
  for (const Wall& wall : face.walls) {
    if (outline.isInner) break;
    streams.out << "  " << oneLine(wall.place)
                << (wall.wall < 0 ? " breaks out by " : " leaves a wall of ")
                << told.length(std::abs(wall.wall)) << " beside " << oneLine(wall.beside)
                << (wall.wall < 0 && wall.isMeant ? ", as it should" : "") << '\n';
  }
}

Result<std::optional<Face>> namedFace(const Arguments& arguments) {
  const auto name = arguments.value("--face");
  if (!name) return std::optional<Face>();
  const auto face = faceNamed(*name);
  if (!face) {
    return Error{ErrorCode::badRequest,
                 "“" + *name + "” is no face; say top, bottom, front, back, left or right",
                 "--face"};
  }
  return face;
}

bool isFinding(const FaceOutlines& face) {
  if (face.outlines.empty()) return true;
  for (const Outline& outline : face.outlines) {
    if (!outline.isClosed) return true;
  }
  for (const Wall& wall : face.walls) {
    if (wall.wall < 0 && !wall.isMeant) return true;
  }
  return false;
}

int runOutline(std::span<const std::string> args, Streams& streams) {
  const auto arguments = sortArguments(
      args, {{"--json"}, {"--part", true}, {"--face", true}, {"--unit", true}, {"--step", true}});
  if (!arguments) return refuse(streams, "outline", arguments.error());
  const auto face = namedFace(*arguments);
  if (!face) return refuse(streams, "outline", face.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return refuse(streams, "outline", opened.error());
  const auto unit = namedUnit(*arguments);
  if (!unit) return refuse(streams, "outline", unit.error());
  const Machine& machine = opened->job.machine;
  const Unit told = unit->value_or(machine.unit);
  const std::string own = told == machine.unit ? machine.step
                          : told == Unit::inch ? Machine().step
                                               : std::string(kMillimetreStep);
  const auto step = readStep(arguments->value("--step").value_or(own), told);
  if (!step) return refuse(streams, "outline", step.error(), opened->file);
  const Told form(*step);
  Json all{{"inchwright", 1}, {"unit", nameOf(told)}, {"outlines", Json::array()}};
  int status = kFine;
  for (const OpenedJob::Solved& solved : opened->solved) {
    const Part& part = opened->part(solved);
    const bool inWords = !arguments->has("--json");
    if (part.turned) {
      if (inWords) streams.out << oneLine(part.name) << " is turned: its shape is on its sheet\n";
      continue;
    }
    const std::vector<Face> faces = *face ? std::vector<Face>{**face} : outlinedFaces(part);
    for (const Face each : faces) {
      const FaceOutlines one =
          outlinesOf(part, solved.solution.positions, solved.solution.beyond, each);
      if (isFinding(one)) status = kFindings;
      if (one.outlines.empty() && inWords) {
        streams.out << toned(streams, Tone::doubt,
                             oneLine(part.name) + ", " + std::string(nameOf(each)) +
                                 ": no outline; not all its outer sides are there and placed")
                    << '\n';
      }
      for (const Outline& outline : one.outlines) {
        if (inWords) {
          print(part.name, one, outline, form, streams);
        } else {
          all["outlines"].push_back(asJson(part.name, one, outline, form));
        }
      }
    }
  }
  if (!arguments->has("--json")) sayDrafts(*opened, streams);
  if (arguments->has("--json")) {
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  }
  return status;
}

}  // namespace

extern const Word kOutlineWord{"outline",
                               "what the work looks like all round, and how thick beside its holes",
                               kOutlineHelp, runOutline};

}  // namespace inchwright::app
