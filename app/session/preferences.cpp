#include "app/session/preferences.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QStandardPaths>
#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/document/shop_document.h"
#include "core/measure/lettered.h"
#include "core/measure/writing.h"

namespace inchwright::app {
namespace {

constexpr int kMostRecent = 10;

QSettings settings() {
  return QSettings(Preferences::file(), QSettings::IniFormat);
}

QVariant kept(const char* key, const QVariant& otherwise = {}) {
  return settings().value(QLatin1String(key), otherwise);
}

void keep(const char* key, const QVariant& value) {
  settings().setValue(QLatin1String(key), value);
}

QString text(std::string_view view) {
  return QString::fromUtf8(view.data(), static_cast<qsizetype>(view.size()));
}

}  // namespace

QString Preferences::file() {
  return QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation) +
         QStringLiteral("/inchwright/desk.ini");
}

Machine Preferences::machine() {
  Machine machine;
  const auto word = [](const char* key) { return kept(key).toString().toStdString(); };
  machine.unit = unitNamed(word("machine/unit")).value_or(machine.unit);
  const std::string step = word("machine/step");
  if (!step.empty() && readStep(step, machine.unit).ok()) machine.step = step;
  machine.xCounts = countsXNamed(word("machine/x_counts")).value_or(machine.xCounts);
  machine.yCounts = countsYNamed(word("machine/y_counts")).value_or(machine.yCounts);
  const auto finder = readLength(word("machine/finder"), {machine.unit});
  if (finder.ok()) machine.finder = *finder;
  return machine;
}

void Preferences::setMachine(const Machine& machine) {
  keep("machine/unit", text(nameOf(machine.unit)));
  keep("machine/step", text(machine.step));
  keep("machine/x_counts", text(nameOf(machine.xCounts)));
  keep("machine/y_counts", text(nameOf(machine.yCounts)));
  keep("machine/finder", machine.finder ? text(machine.finder->text) : QString());
}

Result<Shop> Preferences::shop() {
  const QSettings all = settings();
  const QVariant json = all.value(QStringLiteral("shop"));
  const auto fault = [](const Error& error) {
    return Error{error.code, "the tools kept for all jobs can't be read: " + error.text,
                 Preferences::file().toStdString() + ": " + error.place};
  };
  if (all.status() != QSettings::NoError ||
      (json.isValid() && json.userType() != QMetaType::QString)) {
    return fault({ErrorCode::badDocument, "the file is not as it was written", "shop"});
  }
  if (!json.isValid()) return Shop{};
  Result<Shop> read = readShop(json.toString().toStdString());
  if (!read) return fault(read.error());
  if (const Result<Done> sound = checkShop(*read); !sound) return fault(sound.error());
  return read;
}

void Preferences::setShop(const Shop& shop) {
  keep("shop", text(writeShop(shop)));
}

SheetOptions Preferences::sheet() {
  SheetOptions options;
  const QString paper = kept("sheet/paper").toString();
  options.paper = paper == QLatin1String("letter") ? Paper::letter
                  : paper == QLatin1String("a4")   ? Paper::a4
                                                   : usualPaper(QLocale::system());
  options.readingDistance = std::clamp(kept("sheet/distance", options.readingDistance).toDouble(),
                                       kNearestReading, kFarthestReading);
  return options;
}

void Preferences::setSheet(const SheetOptions& options) {
  keep("sheet/paper",
       options.paper == Paper::letter ? QStringLiteral("letter") : QStringLiteral("a4"));
  keep("sheet/distance", options.readingDistance);
}

Paper usualPaper(const QLocale& locale) {
  return locale.territory() == QLocale::UnitedStates || locale.territory() == QLocale::Canada
             ? Paper::letter
             : Paper::a4;
}

Look::Choice Preferences::look() {
  const QString word = kept("look").toString();
  return word == QLatin1String("day")         ? Look::Choice::day
         : word == QLatin1String("lamplight") ? Look::Choice::lamplight
                                              : Look::Choice::system;
}

void Preferences::setLook(Look::Choice choice) {
  keep("look", choice == Look::Choice::day         ? QStringLiteral("day")
               : choice == Look::Choice::lamplight ? QStringLiteral("lamplight")
                                                   : QStringLiteral("system"));
}

int Preferences::textSize() {
  const int kept = app::kept("text", kUsualTextSize).toInt();
  const auto known = std::find(std::begin(kTextSizes), std::end(kTextSizes), kept);
  return known == std::end(kTextSizes) ? kUsualTextSize : kept;
}

void Preferences::setTextSize(int pixels) {
  keep("text", pixels);
}

EnglishChoice Preferences::english() {
  const QString word = kept("english").toString();
  return word == QLatin1String("uk")   ? EnglishChoice::uk
         : word == QLatin1String("us") ? EnglishChoice::us
                                       : EnglishChoice::system;
}

void Preferences::setEnglish(EnglishChoice choice) {
  keep("english", choice == EnglishChoice::uk   ? QStringLiteral("uk")
                  : choice == EnglishChoice::us ? QStringLiteral("us")
                                                : QStringLiteral("system"));
}

bool Preferences::tourSeen() {
  return kept("tour_seen", false).toBool();
}
void Preferences::setTourSeen(bool seen) {
  keep("tour_seen", seen);
}
QByteArray Preferences::windowGeometry() {
  return kept("window").toByteArray();
}
void Preferences::setWindowGeometry(const QByteArray& geometry) {
  keep("window", geometry);
}

QByteArray Preferences::deskSplit(const QString& which) {
  return settings().value(QStringLiteral("split/") + which).toByteArray();
}
void Preferences::setDeskSplit(const QString& which, const QByteArray& state) {
  settings().setValue(QStringLiteral("split/") + which, state);
}
bool Preferences::viewSlipShown() {
  return kept("view_slip", true).toBool();
}
void Preferences::setViewSlipShown(bool shown) {
  keep("view_slip", shown);
}

namespace {

/// Files are told apart by a mark of their path: a path itself would be taken for groups.
QString markOf(const QString& file) {
  const QByteArray path = QFileInfo(file).absoluteFilePath().toUtf8();
  return QString::fromLatin1(QCryptographicHash::hash(path, QCryptographicHash::Sha1).toHex());
}

}  // namespace

std::optional<Preferences::Looked> Preferences::looked(const QString& file) {
  const QStringList kept =
      settings().value(QStringLiteral("looked/") + markOf(file)).toStringList();
  if (kept.size() != 6) return std::nullopt;
  Looked looked{kept[0].toInt(), kept[1].toInt(), kept[2].toInt(), kept[3].toDouble(), {}};
  looked.middle = {kept[4].toDouble(), kept[5].toDouble()};
  const bool sound = looked.part >= 0 && looked.setup >= 0 && looked.face >= 0 && looked.face < 6 &&
                     std::isfinite(looked.scale) && std::isfinite(looked.middle.x()) &&
                     std::isfinite(looked.middle.y());
  return sound ? std::optional(looked) : std::nullopt;
}

void Preferences::noteLooked(const QString& file, const Looked& looked) {
  QSettings all = settings();
  QStringList order = all.value(QStringLiteral("looked_order")).toStringList();
  const QString mark = markOf(file);
  order.removeAll(mark);
  order.prepend(mark);
  while (order.size() > kMostRecent) {
    all.remove(QStringLiteral("looked/") + order.takeLast());
  }
  all.setValue(QStringLiteral("looked_order"), order);
  const auto number = [](double value) { return QString::number(value, 'g', 9); };
  all.setValue(QStringLiteral("looked/") + mark,
               QStringList{QString::number(looked.part), QString::number(looked.setup),
                           QString::number(looked.face), number(looked.scale),
                           number(looked.middle.x()), number(looked.middle.y())});
}

QStringList Preferences::recentFiles() {
  QStringList files = kept("recent").toStringList();
  files.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
  return files.mid(0, kMostRecent);
}

void Preferences::noteRecentFile(const QString& file) {
  QStringList files = recentFiles();
  const QString path = QFileInfo(file).absoluteFilePath();
  files.removeAll(path);
  files.prepend(path);
  keep("recent", files.mid(0, kMostRecent));
}

QString dataFolder(const QString& name) {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
                         QStringLiteral("/inchwright/") + name;
  QDir().mkpath(folder);
  return folder;
}

}  // namespace inchwright::app
