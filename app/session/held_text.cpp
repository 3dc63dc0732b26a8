#include "app/session/held_text.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

namespace inchwright::app {
namespace {

const QString kBed = QStringLiteral("bed");

QString oneText(const LaidParallel& one) {
  const auto figure = [](const std::optional<Lettered>& size) {
    return size ? QString::fromStdString(size->text) : QString();
  };
  QString text = QString::fromLatin1(nameOf(one.jaw).data()) + QLatin1Char(' ') +
                 figure(one.thick) + QStringLiteral(" x ") + figure(one.tall);
  if (one.gap) text += QStringLiteral(" gap ") + figure(one.gap);
  if (one.from && one.to) {
    text += QStringLiteral(" from ") + figure(one.from) + QStringLiteral(" to ") + figure(one.to);
  }
  return text;
}

/// What is not said in a line stays as it is in `one`.
Result<LaidParallel> readOne(const QString& text, Unit unit, LaidParallel one) {
  static const QRegularExpression form(
      QStringLiteral("^(?:(fixed|moving)\\s+)?(.+?)\\s*[x×]\\s*(.+?)(?:\\s+gap\\s+(.+?))?"
                     "(?:\\s+from\\s+(.+?)\\s+to\\s+(.+))?$"));
  const QRegularExpressionMatch match = form.match(text);
  if (!match.hasMatch()) {
    return Error{ErrorCode::badText,
                 QCoreApplication::translate(
                     "Parallels", "“%1” is no parallel: say such as fixed 1/8 x 1 gap 1/4")
                     .arg(text)
                     .toStdString(),
                 {}};
  }
  one.jaw = match.captured(1) == QLatin1String("moving") ? Jaw::moving : Jaw::fixed;
  one.gap.reset();
  if (one.from && one.to) one.from = one.to = std::nullopt;
  for (const auto& [group, member] :
       {std::pair{2, &one.thick}, std::pair{3, &one.tall}, std::pair{4, &one.gap},
        std::pair{5, &one.from}, std::pair{6, &one.to}}) {
    const QString figure = match.captured(group).trimmed();
    if (figure.isEmpty()) continue;
    const auto read = readLength(figure.toStdString(), {unit});
    if (!read.ok()) return read.error();
    *member = *read;
  }
  return one;
}

}  // namespace

QString parallelsText(const std::optional<std::vector<LaidParallel>>& parallels) {
  if (!parallels) return {};
  if (parallels->empty()) return kBed;
  QStringList items;
  for (const LaidParallel& one : *parallels) items << oneText(one);
  return items.join(QStringLiteral("; "));
}

Result<std::optional<std::vector<LaidParallel>>> readParallels(
    const QString& text, const std::optional<std::vector<LaidParallel>>& before, Unit unit) {
  const QString all = text.trimmed();
  if (all.isEmpty()) return std::optional<std::vector<LaidParallel>>();
  std::vector<LaidParallel> parallels;
  if (all == kBed) return std::optional(parallels);
  for (const QString& item : all.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
    const std::size_t at = parallels.size();
    const LaidParallel was = before && at < before->size() ? (*before)[at] : LaidParallel{};
    if (oneText(was) == item.trimmed()) {
      parallels.push_back(was);
      continue;
    }
    Result<LaidParallel> one = readOne(item.trimmed(), unit, was);
    if (!one.ok()) return one.error();
    parallels.push_back(*std::move(one));
  }
  return std::optional(parallels);
}

}  // namespace inchwright::app
