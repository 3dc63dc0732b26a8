#include "app/render/font_name.h"

#include <QtEndian>

namespace inchwright::app {
namespace {

constexpr int kFamily = 1;
constexpr int kTypographicFamily = 16;
constexpr int kMacintosh = 1;

/// A big-endian number at an offset; 0 beyond the end.
template <class Number>
Number numberAt(const QByteArray& font, qsizetype at) {
  if (at < 0 || at + static_cast<qsizetype>(sizeof(Number)) > font.size()) return 0;
  return qFromBigEndian<Number>(font.constData() + at);
}

qsizetype nameTable(const QByteArray& font) {
  const int tables = numberAt<quint16>(font, 4);
  for (int i = 0; i < tables; ++i) {
    const qsizetype record = 12 + 16 * i;
    if (font.mid(record, 4) == "name") return numberAt<quint32>(font, record + 8);
  }
  return -1;
}

}  // namespace

QByteArray withFamily(QByteArray font, const QByteArray& family) {
  const qsizetype table = nameTable(font);
  if (table < 0) return font;
  const int records = numberAt<quint16>(font, table + 2);
  const qsizetype strings = table + numberAt<quint16>(font, table + 4);
  for (int i = 0; i < records; ++i) {
    const qsizetype record = table + 6 + 12 * i;
    const int kind = numberAt<quint16>(font, record + 6);
    if (kind != kFamily && kind != kTypographicFamily) continue;
    QByteArray name = family;
    if (numberAt<quint16>(font, record) != kMacintosh) {
      name.clear();
      for (const char character : family) name.append('\0').append(character);  // UTF-16
    }
    const qsizetype at = strings + numberAt<quint16>(font, record + 10);
    if (name.size() > numberAt<quint16>(font, record + 8) || at + name.size() > font.size())
      continue;
    font.replace(at, name.size(), name);
    qToBigEndian(static_cast<quint16>(name.size()), font.data() + record + 8);
  }
  return font;
}

}  // namespace inchwright::app
