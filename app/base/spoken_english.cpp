#include "app/base/spoken_english.h"

#include <QCoreApplication>
#include <QLocale>
#include <QTranslator>

// Outside any namespace, as Qt asks: the resource lies in a static library and must be named once.
static void initialiseEnglish() {
  Q_INIT_RESOURCE(english);
}

namespace inchwright::app {
namespace {

English spoken = English::uk;

/// The two differ in words, not in where these stand: one list serves every context.
class EnglishTranslator : public QTranslator {
 public:
  using QTranslator::QTranslator;

  QString translate(const char*, const char* source, const char* apart, int count) const override {
    return QTranslator::translate("Desk", source, apart, count);
  }
};

}  // namespace

English englishOf(EnglishChoice choice) {
  if (choice == EnglishChoice::uk) return English::uk;
  if (choice == EnglishChoice::us) return English::us;
  return QLocale::system().territory() == QLocale::UnitedStates ? English::us : English::uk;
}

void speakEnglish(EnglishChoice choice) {
  initialiseEnglish();
  QCoreApplication* application = QCoreApplication::instance();
  // Taken from the application as it goes.
  delete application->findChild<EnglishTranslator*>();
  auto* translator = new EnglishTranslator(application);
  spoken = englishOf(choice);
  const QString name = spoken == English::us ? QStringLiteral(":/english/inchwright_en_US.qm")
                                             : QStringLiteral(":/english/inchwright_en_GB.qm");
  if (translator->load(name)) QCoreApplication::installTranslator(translator);
}

English spokenEnglish() {
  return spoken;
}

QString coreWords(std::string_view text, const Part* part) {
  const auto isName = [part](std::string_view word) {
    return part != nullptr && part->feature(word) != nullptr;
  };
  return QString::fromStdString(inEnglish(text, spoken, isName));
}

namespace {
constexpr QChar kJoined(0x2060);  // of no width, and no line ends beside it
}

QString withWholeFigures(const QString& text) {
  QString whole;
  for (int i = 0; i < text.size(); ++i) {
    whole += text[i];
    const bool isFirst = i == 0 || !text[i - 1].isDigit();
    if (isFirst && text[i] == u'.' && i + 1 < text.size() && text[i + 1].isDigit()) {
      whole += kJoined;
    }
  }
  return whole;
}

QString withoutJoins(QString text) {
  return text.remove(kJoined);
}

}  // namespace inchwright::app
