#include <QImage>
#include <algorithm>
#include <array>
#include <cmath>
#include <iomanip>
#include <locale>
#include <nlohmann/json.hpp>
#include <ostream>
#include <sstream>

#include "app/picture/picture_decoder.h"
#include "app/picture/squared_picture.h"
#include "app/session/offering.h"
#include "app/session/picture_edits.h"
#include "app/words/console.h"
#include "app/words/job_file.h"
#include "app/words/words.h"
#include "core/document/atomic_file.h"
#include "core/part/plain_decimal.h"
#include "core/seen/offer.h"

namespace inchwright::app {
namespace {

using Json = nlohmann::ordered_json;
using seen::FeatureOffer;
using seen::OfferedFeature;
using seen::OfferedReading;
using seen::Offers;
using seen::ReadingOffer;

constexpr std::string_view kOffersHelp =
    R"(inchwright offers FILE [--part P] [--picture NAME] [--json]

What the picture of the print offers: features that are drawn and figures that are lettered,
with what speaks for each. Nothing is measured: a figure is offered only because it is lettered,
and nothing is put into the document; each is for a person to confirm.

  --part P        the part, where the document has several
  --picture NAME  the picture, else the one under the part's face, or the only one
  --json          one JSON object

Witnesses: G the glyphs are plain, g they may be these, S the drawn distance agrees with this
figure and no other candidate, C it closes exactly with what is read already.

Exit status: 0 fine; 1 printed, and there is something to look at: a plain figure disagrees with
the drawing, or the lettering is too small to be read well; 2 the words or the file could not be
used.
)";

constexpr double kDisagrees = 3;  // standard deviations

/// The part's picture, and where the face's zero lies on it, inches.
struct Chosen {
  const Picture* picture = nullptr;
  PlanePoint zero;
};

Result<Chosen> chosenPicture(const Arguments& arguments, const Job& job, const Part& part) {
  const auto named = arguments.value("--picture");
  Chosen out;
  const PictureView* under = nullptr;
  for (const PictureView& view : part.views) {
    if (under == nullptr && (!named || view.picture == *named)) under = &view;
  }
  if (named) {
    out.picture = job.picture(*named);
  } else if (under != nullptr) {
    out.picture = job.picture(under->picture);
  } else if (job.pictures.size() == 1) {
    out.picture = &job.pictures.front();
  }
  if (out.picture == nullptr) {
    return Error{ErrorCode::notFound,
                 named ? "there is no such picture"
                       : "no picture lies under the part; say which: --picture NAME",
                 "--picture"};
  }
  if (under != nullptr && under->turn != 0) {
    return Error{ErrorCode::badRequest,
                 "the view is drawn turned, and only upright lettering is looked at", "--picture"};
  }
  if (under != nullptr && under->at.size() == 2) {
    out.zero = {plainDecimal(under->at[0]).value_or(0), plainDecimal(under->at[1]).value_or(0)};
  }
  return out;
}

Result<QImage> greyPicture(const Picture& picture, const std::string& file) {
  QByteArray bytes;
  if (!picture.data.empty()) {
    bytes = QByteArray::fromStdString(picture.data.get());
  } else {
    const QString linked = linkedFile(QString::fromStdString(file), picture);
    if (linked.isEmpty()) {
      return Error{ErrorCode::fileTrouble, "the link leads away from the document's folder",
                   picture.file};
    }
    const auto read = readWholeFile(linked.toStdString(), kLargestPictureFile);
    if (!read) return Error{read.error().code, read.error().text, picture.file};
    bytes = QByteArray::fromStdString(*read);
  }
  const Result<QImage> image = decodePicture(bytes, picture.page);
  if (!image) return Error{image.error().code, image.error().text, picture.name};
  return image->convertToFormat(QImage::Format_Grayscale8);
}

std::string_view wordFor(OfferedFeature kind) {
  constexpr std::array<std::string_view, 8> kWordsOfKinds{"hole", "edge",  "slot", "ring",
                                                          "row",  "round", "line", "arc"};
  return kWordsOfKinds[static_cast<std::size_t>(kind)];
}

std::string decimal(double inches) {
  std::ostringstream out;
  out.imbue(std::locale::classic());
  out << std::fixed << std::setprecision(4) << inches + 0.0;
  return out.str() == "-0.0000" ? "0.0000" : out.str();
}

Json pointOf(PlanePoint p) {
  return Json::array({decimal(p.x), decimal(p.y)});
}

double rounded(double value, double step) {
  return std::round(value / step) * step;
}

Json asJson(const FeatureOffer& f) {
  Json out{{"kind", wordFor(f.kind)},        {"at", pointOf(f.at)}, {"size", nullptr},
           {"sure", rounded(f.sure, 0.001)}, {"ready", f.ready},    {"view", f.view}};
  const bool row = f.kind == OfferedFeature::row;
  // An edge stands at a place along its axis, a row runs along it.
  if (f.kind == OfferedFeature::edge || row) out["axis"] = f.alongX ? "x" : "y";
  if (f.kind != OfferedFeature::hole && f.kind != OfferedFeature::ring)
    out["ends"] = Json::array({pointOf(f.from), pointOf(f.to)});
  if (f.count > 0) out["count"] = f.count;
  if (f.firstAngle) out["first_angle"] = *f.firstAngle;
  if (f.size.empty()) return out;
  out["size"] = f.size;
  out["size_ticks"] = f.sizeTicks;
  out["size_witnesses"] = f.sizeWitnesses.letters();
  out["note"] = f.note;
  if (f.pcd.empty()) return out;
  out["pcd"] = f.pcd;
  out["pcd_witnesses"] = f.pcdWitnesses.letters();
  return out;
}

Json asJson(const ReadingOffer& r) {
  Json out;
  const bool x = r.kind == OfferedReading::alongX, y = r.kind == OfferedReading::alongY;
  if (x || y) {
    out = Json{{"axis", x ? "x" : "y"},
               {"from", decimal(x ? r.from.x : r.from.y)},
               {"to", decimal(x ? r.to.x : r.to.y)}};
  } else {
    out = Json{{"kind", r.kind == OfferedReading::centres ? "centres" : "angle"},
               {"from", pointOf(r.from)},
               {"to", pointOf(r.to)}};
  }
  out["candidates"] = Json::array();
  for (const seen::Candidate& c : r.candidates) {
    out["candidates"].push_back({{"text", c.text},
                                 {"ticks", c.ticks},
                                 {"glyphs", rounded(c.glyphs, 0.001)},
                                 {"scale", rounded(c.scale, 0.01)},
                                 {"closes", c.closes}});
  }
  out["witnesses"] = r.witnesses.letters();
  const auto whole = [](double v) { return static_cast<std::int64_t>(std::llround(v)); };
  out["box"] =
      Json::array({whole(r.figure.x), whole(r.figure.y), whole(r.figure.w), whole(r.figure.h)});
  out["view"] = r.view;
  return out;
}

bool disagrees(const ReadingOffer& r) {
  return r.witnesses.plain && r.candidates.front().scale > kDisagrees;
}

void printLines(const Offers& offers, std::ostream& out) {
  std::vector<std::vector<std::string>> features{{"Drawn", "at", "", "lettered", "by", ""}};
  for (const FeatureOffer& f : offers.features) {
    const bool several = f.kind == OfferedFeature::row || f.kind == OfferedFeature::ring;
    features.push_back(
        {std::string(wordFor(f.kind)) + (several ? " of " + std::to_string(f.count) : ""),
         decimal(f.at.x), decimal(f.at.y),
         f.size + (f.note.empty() ? "" : " " + f.note) + (f.pcd.empty() ? "" : " ON " + f.pcd),
         f.sizeWitnesses.letters(), f.ready ? "" : "not plainly drawn"});
  }
  std::vector<std::vector<std::string>> readings{{"Lettered", "from", "to", "by", ""}};
  for (const ReadingOffer& r : offers.readings) {
    const bool y = r.kind == OfferedReading::alongY, along = y || r.kind == OfferedReading::alongX;
    const auto end = [&](PlanePoint p) {
      return along ? (y ? "y " : "x ") + decimal(y ? p.y : p.x)
                   : decimal(p.x) + ", " + decimal(p.y);
    };
    const std::string remark = disagrees(r) ? "disagrees with the drawing" : "";
    readings.push_back({r.candidates.empty() ? "?" : r.candidates.front().text, end(r.from),
                        end(r.to), r.witnesses.letters(), remark});
  }
  for (const auto* rows : {&features, &readings}) {
    for (const std::string& line :
         alignedRows(*rows, std::vector<Justify>(rows->front().size(), Justify::left))) {
      out << oneLine(line) << '\n';
    }
  }
  if (offers.tooCoarse)
    out << "The lettering is too small to be read well: photograph each quarter of the print by "
           "itself.\n";
}

Result<Offers> offersOf(const Arguments& arguments, const OpenedJob& opened) {
  if (opened.solved.size() != 1)
    return Error{ErrorCode::badRequest, "say which part: --part P", "--part"};
  const Part& part = opened.part(opened.solved.front());
  const Result<Chosen> chosen = chosenPicture(arguments, opened.job, part);
  if (!chosen) return chosen.error();
  const Result<Homography> map = pixelsToFace(chosen->picture->points, chosen->zero);
  if (!map) return Error{map.error().code, map.error().text, chosen->picture->name};
  const Result<QImage> image = greyPicture(*chosen->picture, opened.file);
  if (!image) return image.error();
  seen::Options options;
  options.unit = opened.job.unit;
  options.confirmed = confirmedIn(part, Face::top);
  return seen::offer({image->constBits(), image->width(), image->height(), image->bytesPerLine()},
                     *map, options);
}

int runOffers(std::span<const std::string> args, Streams& streams) {
  const auto stop = [&](const Error& error, std::string_view file = {}) {
    return refuse(streams, "offers", error, file);
  };
  const Result<Arguments> arguments =
      sortArguments(args, {{"--json"}, {"--part", true}, {"--picture", true}});
  if (!arguments) return stop(arguments.error());
  const Result<OpenedJob> opened = openJob(*arguments);
  if (!opened) return stop(opened.error());
  const Result<Offers> offers = offersOf(*arguments, *opened);
  if (!offers) return stop(offers.error(), opened->file);
  if (arguments->has("--json")) {
    Json body{{"features", Json::array()}, {"readings", Json::array()}};
    for (const FeatureOffer& f : offers->features) body["features"].push_back(asJson(f));
    for (const ReadingOffer& r : offers->readings) body["readings"].push_back(asJson(r));
    body["too_coarse"] = offers->tooCoarse;
    const Json all{{"inchwright", 1}, {"offers", std::move(body)}};
    streams.out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
  } else {
    printLines(*offers, streams.out);
  }
  const bool asked =
      offers->tooCoarse || std::any_of(offers->readings.begin(), offers->readings.end(), disagrees);
  return asked ? kFindings : kFine;
}

}  // namespace

extern const Word kOffersWord{"offers", "what the picture of the print offers", kOffersHelp,
                              runOffers};

}  // namespace inchwright::app
