#pragma once

#include <QByteArray>
#include <QLocale>
#include <QPointF>
#include <QString>
#include <QStringList>
#include <optional>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "core/base/result.h"
#include "core/part/setup.h"
#include "core/part/shop_owned.h"
#include "core/sheet/tape_up.h"

namespace inchwright::app {

/// What the program keeps for its user between one start and the next, in a file of the user's own
/// configuration folder. What is missing or spoilt is as at the first start; only tools that can't
/// be read are told, since others would be taken in their stead.
class Preferences {
 public:
  /// The file itself.
  static QString file();

  /// The machine new jobs begin with.
  static Machine machine();
  static void setMachine(const Machine& machine);

  /// The tools owned, for all jobs that do not carry their own; says nothing where none are kept.
  /// Errors: `badDocument` and those of `checkShop`; `place` begins with the file.
  static Result<Shop> shop();
  static void setShop(const Shop& shop);

  /// Paper and reading distance; the date and all that belongs to one sheet are not kept. Until one
  /// is chosen the paper is the usual one of the user's country.
  static SheetOptions sheet();
  static void setSheet(const SheetOptions& options);

  static Look::Choice look();
  static void setLook(Look::Choice choice);

  /// One of `kTextSizes`.
  static int textSize();
  static void setTextSize(int pixels);

  static EnglishChoice english();
  static void setEnglish(EnglishChoice choice);

  static bool tourSeen();
  static void setTourSeen(bool seen);

  static QByteArray windowGeometry();
  static void setWindowGeometry(const QByteArray& geometry);
  /// How the desk is shared out: between the sheets, and what lies below them.
  static QByteArray deskSplit(const QString& which);
  static void setDeskSplit(const QString& which, const QByteArray& state);
  /// Whether the slip that says which view this is lies on the print.
  static bool viewSlipShown();
  static void setViewSlipShown(bool shown);

  /// What of a file one looked at when it was left.
  struct Looked {
    int part = 0;
    int setup = 0;
    int face = 0;
    double scale = 0;  ///< pixels an inch; 0: as fitted
    QPointF middle;    ///< inches in the view
  };
  static std::optional<Looked> looked(const QString& file);
  static void noteLooked(const QString& file, const Looked& looked);

  /// Files opened or saved, the last one first, at most ten; those that are gone are left out.
  static QStringList recentFiles();
  static void noteRecentFile(const QString& file);
};

/// The paper that lies in the printers of a country: letter in the United States and Canada (common
/// practice, no source), A4 elsewhere.
Paper usualPaper(const QLocale& locale);

/// A folder of the program's own below the user's application data, made when it is not there.
QString dataFolder(const QString& name);

}  // namespace inchwright::app
