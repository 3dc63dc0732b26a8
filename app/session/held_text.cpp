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

QString pieceText(const StockPiece& piece) {
  QString text = QString::fromStdString(piece.name);
  for (const Axis axis : kAxes) {
    const auto& size = piece.size[static_cast<std::size_t>(axis)];
    if (size)
      text += QStringLiteral(" %1 %2").arg(QLatin1String(nameOf(axis).data()),
                                           QString::fromStdString(size->text));
  }
  return text;
}

Error noPiece(const QString& text) {
  return {ErrorCode::badText,
          QCoreApplication::translate("Pieces", "“%1” is no piece: say such as 1 x 4.031 y 1.520")
              .arg(text)
              .toStdString(),
          {}};
}

Result<StockPiece> readPiece(const QString& text, Unit unit, StockPiece piece) {
  QStringList name;
  std::array<QStringList, 3> sizes;
  std::optional<std::size_t> axis;
  for (const QString& word : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    const auto named = name.isEmpty() ? std::nullopt : axisNamed(word.toLower().toStdString());
    if (named) {
      axis = static_cast<std::size_t>(*named);
      if (!sizes[*axis].isEmpty()) return noPiece(text);
    } else {
      (axis ? sizes[*axis] : name) << word;
    }
  }
  if (!axis) return noPiece(text);
  piece.name = name.join(QLatin1Char(' ')).toStdString();
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    piece.size[i].reset();
    if (sizes[i].isEmpty()) continue;
    auto size = readLength(sizes[i].join(QLatin1Char(' ')).toStdString(), {unit});
    if (!size.ok()) return size.error();
    piece.size[i] = std::move(size).value();
  }
  return piece;
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

QString piecesText(const std::vector<StockPiece>& pieces) {
  QStringList items;
  for (const StockPiece& one : pieces) items << pieceText(one);
  return items.join(QStringLiteral("; "));
}

Result<std::vector<StockPiece>> readPieces(const QString& text,
                                           const std::vector<StockPiece>& before, Unit unit) {
  std::vector<StockPiece> pieces;
  for (const QString& item : text.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
    if (item.trimmed().isEmpty()) continue;
    const std::size_t at = pieces.size();
    const StockPiece was = at < before.size() ? before[at] : StockPiece{};
    Result<StockPiece> one = pieceText(was) == item.trimmed()
                                 ? Result<StockPiece>(was)
                                 : readPiece(item.trimmed(), unit, was);
    if (!one.ok()) return one.error();
    for (const StockPiece& other : pieces) {
      if (other.name == one->name) return noPiece(item.trimmed());
    }
    pieces.push_back(*std::move(one));
  }
  return pieces;
}

}  // namespace inchwright::app
