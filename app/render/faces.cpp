#include "app/render/faces.h"

#include <QFile>
#include <QFontDatabase>
#include <QtGlobal>

#include "app/render/font_name.h"

// Outside any namespace, as Qt asks: the resource lies in a static library and must be named once.
static void initialiseFaces() {
  Q_INIT_RESOURCE(fonts);
}

namespace inchwright::app {
namespace {

constexpr Typeface kSides[] = {Typeface::regular, Typeface::bold, Typeface::mono,
                               Typeface::monoBold};

bool isBold(Typeface face) {
  return face == Typeface::bold || face == Typeface::monoBold;
}
bool isMono(Typeface face) {
  return face == Typeface::mono || face == Typeface::monoBold;
}

QString faceResource(Typeface face) {
  return QStringLiteral(":/fonts/B612%1-%2.otf")
      .arg(isMono(face) ? QStringLiteral("Mono") : QString(),
           isBold(face) ? QStringLiteral("Bold") : QStringLiteral("Regular"));
}

Result<Done> loadOnce() {
  initialiseFaces();
  for (const Typeface face : kSides) {
    const int id = QFontDatabase::addApplicationFontFromData(faceFile(face));
    if (!QFontDatabase::applicationFontFamilies(id).contains(faceFamily(face))) {
      return Error{ErrorCode::fileTrouble, "a typeface that belongs to the program can't be used",
                   faceResource(face).toStdString()};
    }
  }
  return Done{};
}

}  // namespace

Result<Done> loadFaces() {
  static const Result<Done> outcome = loadOnce();
  return outcome;
}

QFont faceFont(Typeface face) {
  QFont font(faceFamily(face));
  font.setBold(isBold(face));
  font.setPixelSize(kFacePixels);
  font.setKerning(false);
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setStyleStrategy(QFont::PreferNoShaping);
  return font;
}

QByteArray faceFile(Typeface face) {
  initialiseFaces();
  QFile file(faceResource(face));
  if (!file.open(QIODevice::ReadOnly)) return {};
  return withFamily(file.readAll(), faceFamily(face).toLatin1());
}

QString faceFamily(Typeface face) {
  // Four letters, as many as the name they replace.
  return QStringLiteral("Iw%1%2").arg(isMono(face) ? 'm' : 's').arg(isBold(face) ? 'b' : 'r');
}

}  // namespace inchwright::app
