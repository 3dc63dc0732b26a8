#include "app/session/picture_edits.h"

#include <QDir>
#include <QFileInfo>
#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "app/picture/kept_picture.h"
#include "app/picture/squared_picture.h"
#include "core/part/plain_decimal.h"

namespace inchwright::app {
namespace {

std::string freeName(const Job& job, const std::string& wanted) {
  std::string name = wanted.empty() ? "print" : wanted;
  for (int number = 2; job.picture(name) != nullptr; ++number) {
    name = wanted + " " + std::to_string(number);
  }
  return name;
}

/// Takes away pictures that lie under no face any more.
void dropUnused(Job& job) {
  std::set<std::string> used;
  for (const Part& part : job.parts) {
    for (const PictureView& view : part.views) used.insert(view.picture);
  }
  auto& all = job.pictures;
  all.erase(std::remove_if(all.begin(), all.end(),
                           [&](const Picture& one) { return used.count(one.name) == 0; }),
            all.end());
}

/// The view in front; the end when there is none.
template <class Views>
auto inFront(Views& views, Face face) {
  return std::find_if(views.begin(), views.end(),
                      [&](const PictureView& view) { return view.face == face; });
}

template <class Change>
Result<Job> changePicture(const Job& job, const std::string& picture, const Change& change) {
  Job next = job;
  for (Picture& one : next.pictures) {
    if (one.name != picture) continue;
    change(one);
    return next;
  }
  return Error{ErrorCode::notFound, "there is no picture `" + picture + "`", picture};
}

}  // namespace

std::string tracedText(double inches) {
  return QString::number(std::round(inches * 1000) / 1000, 'f', 3).toStdString();
}

QString linkedFile(const QString& document, const Picture& picture) {
  const QString link = QDir::cleanPath(QString::fromStdString(picture.file));
  const bool outside = QDir::isAbsolutePath(link) || link == QStringLiteral("..") ||
                       link.startsWith(QStringLiteral("../"));
  return outside ? QString() : QFileInfo(document).absoluteDir().absoluteFilePath(link);
}

Result<Picture> keptInside(const Picture& linked, const QByteArray& bytes) {
  const auto kept = keptPicture(bytes, linked.page);
  if (!kept.ok()) return kept.error();
  Picture inside = linked;
  inside.file.clear();
  inside.data = PictureBytes(kept->bytes.toStdString());
  inside.page = kept->page;
  for (SquaringPoint& point : inside.points) {
    point.pixelX *= kept->scale.width();
    point.pixelY *= kept->scale.height();
  }
  return inside;
}

const PictureView* viewOf(const Part& part, Face face) {
  const auto found = inFront(part.views, face);
  return found == part.views.end() ? nullptr : &*found;
}

std::vector<const PictureView*> viewsOf(const Part& part, Face face) {
  std::vector<const PictureView*> views;
  for (const PictureView& view : part.views) {
    if (view.face == face) views.push_back(&view);
  }
  return views;
}

const Picture* pictureUnder(const Job& job, const Part& part, Face face) {
  const PictureView* view = viewOf(part, face);
  return view == nullptr ? nullptr : job.picture(view->picture);
}

std::vector<const PictureView*> squaredViews(const Job& job, const Part& part) {
  std::vector<const PictureView*> views;
  for (const PictureView& view : part.views) {
    const Picture* picture = job.picture(view.picture);
    if (picture == nullptr || picture->points.size() < 2) continue;
    const bool again = std::any_of(views.begin(), views.end(), [&](const PictureView* one) {
      return one->picture == view.picture;
    });
    if (!again) views.push_back(&view);
  }
  return views;
}

QPointF offsetOf(const PictureView& view) {
  if (view.at.size() != 2) return {};
  return {plainDecimal(view.at[0]).value_or(0), plainDecimal(view.at[1]).value_or(0)};
}

int uprightTurn(const PictureView& view) {
  return (360 - view.turn) % 360;
}

QPointF onPrint(QPointF inView, const PictureView& view) {
  return offsetOf(view) + turnedBy(inView, view.turn);
}

QPointF inView(QPointF onPrint, const PictureView& view) {
  return turnedBy(onPrint - offsetOf(view), uprightTurn(view));
}

ViewSense viewSense(Face face) {
  return {face == Face::back || face == Face::left, face == Face::bottom};
}

QPointF asViewed(QPointF inFace, Face face) {
  const ViewSense sense = viewSense(face);
  return {sense.firstReversed ? -inFace.x() : inFace.x(),
          sense.secondReversed ? -inFace.y() : inFace.y()};
}

Result<Job> layPicture(const Job& job, int part, Face face, const QString& name,
                       const QByteArray& bytes) {
  if (bytes.isEmpty()) return Error{ErrorCode::fileTrouble, "the picture is empty", {}};
  Job next = job;
  if (next.parts.empty()) {
    Part first;
    first.name = name.isEmpty() ? "Part" : name.toStdString();
    next.parts.push_back(std::move(first));
    part = 0;
  }
  Part& under = next.parts[static_cast<std::size_t>(part)];
  Picture picture;
  picture.name = freeName(next, name.toStdString());
  picture.data = PictureBytes(bytes.toStdString());
  PictureView view;
  view.face = face;
  view.picture = picture.name;
  under.views.insert(inFront(under.views, face), std::move(view));
  next.pictures.push_back(std::move(picture));
  return next;
}

Job liftPicture(const Job& job, int part, Face face) {
  Job next = job;
  if (next.parts.empty()) return next;
  auto& views = next.parts[static_cast<std::size_t>(part)].views;
  if (const auto front = inFront(views, face); front != views.end()) views.erase(front);
  dropUnused(next);
  return next;
}

Job nextInFront(const Job& job, int part, Face face) {
  Job next = job;
  auto& views = next.parts[static_cast<std::size_t>(part)].views;
  const auto front = inFront(views, face);
  if (front == views.end()) return next;
  PictureView behind = *front;
  views.erase(front);
  views.push_back(std::move(behind));
  return next;
}

Result<Job> turnAsTaken(const Job& job, const std::string& picture) {
  return changePicture(job, picture, [](Picture& one) { one.turn = (one.turn + 90) % 360; });
}

Result<Job> setPicturePoints(const Job& job, const std::string& picture,
                             const std::vector<SquaringPoint>& points) {
  return changePicture(job, picture, [&](Picture& one) { one.points = points; });
}

Result<std::pair<Lettered, Lettered>> readTwoLengths(const std::string& text, Unit unit) {
  std::optional<std::pair<Lettered, Lettered>> found;
  Error first{ErrorCode::badText, "give two lengths, across and up: 3 7/8, 1 1/2", {}, 0};
  const bool comma = text.find(',') != std::string::npos;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] != (comma ? ',' : ' ')) continue;
    auto x = readLength(text.substr(0, at), {unit});
    if (!x.ok()) continue;
    auto y = readLength(text.substr(at + 1), {unit});
    if (!y.ok()) {
      first = y.error();
      first.at = at + 1 + y.error().at.value_or(0);
      continue;
    }
    if (found) {
      return Error{ErrorCode::badText, "put a comma between the two lengths", {}, at};
    }
    found.emplace(std::move(*x), std::move(*y));
  }
  if (found) return *std::move(found);
  return first;
}

}  // namespace inchwright::app
