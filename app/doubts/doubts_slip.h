#pragma once

#include <QColor>
#include <QString>
#include <QWidget>
#include <vector>

#include "app/session/work.h"

class QLabel;
class QListWidget;
class QListWidgetItem;
class QPushButton;

namespace inchwright::app {

/// What stands in doubt, always in sight, worded as a colleague would.
///
/// Choosing a line shows its place on the print. Below a clash stand its running sums and the
/// readings suspected: Enter on one of those reads it so. Any doubt can be accepted, and taken
/// back; the sheet says DRAFT until each is settled one way or the other.
class DoubtsSlip : public QWidget {
  Q_OBJECT

 public:
  explicit DoubtsSlip(Work& work, QWidget* parent = nullptr);

  QListWidget* list() const { return list_; }

  /// Has the strip ask why the chosen doubt may stand; takes that back of one that does.
  void toggleAccepted();

 signals:
  /// Something was settled here, or is to be said in the strip: the hands go back to it.
  void settled();

 protected:
  void paintEvent(QPaintEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  /// What of the solution can be taken to settle a doubt.
  enum class Choice { none, suspect, centreSuspect, fractions, answer };

  /// What a line of the list stands for.
  struct Entry {
    int doubt = -1;                ///< index into Solution::doubts
    Choice choice = Choice::none;  ///< what Enter on the line, or `Read it so`, takes
    std::size_t list = 0;          ///< where its choices stand: of clashes, roundings, answers …
    std::size_t number = 0;        ///< which of them
    Id member = {};                ///< of a running sum: the reading, or what else is summed there
    std::vector<int> alike = {};   ///< all the doubts that are said in this one line, if several
  };

  /// A line of the list as it is shown.
  struct Line {
    QString text;
    QColor colour;
  };

  void fill();
  bool isListed() const;  ///< the list shows `lines_` already: most edits leave all doubts
  void listAnew();
  /// After filling anew, the line that says what the chosen one said; where it is gone, one near by
  /// on which Enter does nothing.
  int rowAgain(int row, const QString& words) const;
  void sayWhatComesFirst();
  int addAll();  ///< how many are open
  void addDoubt(int index);
  void addLoose(const std::vector<int>& loose);
  void addClash(int doubt, int index);
  void addRounding(int doubt, std::size_t index);
  void add(const QString& text, const Entry& entry, bool inDoubt);
  void addCentres(int doubt, const CentresClash& clash, std::size_t index);
  void addAnswers(int doubt, const SeveralAnswers& several, std::size_t index);
  const Entry* chosen() const;
  /// The line that is chosen where it has something to take; of a reading that is chosen elsewhere
  /// what blames that. `Choice::none`: nothing.
  Entry meant() const;
  void take(const Entry& wanted);  ///< reads a figure as it is suspected to be, or settles another
  QString wordsOf(const Entry& entry) const;
  Id readingOf(const Entry& entry) const;  ///< the one suspected; empty where none is
  void showChoices();                      ///< what can be done with the chosen line
  void showChosen();

  Work& work_;
  QLabel* heading_;
  QListWidget* list_;
  QPushButton* take_;
  QPushButton* accept_;
  std::vector<Line> lines_;  ///< as it is to be
  std::vector<Entry> entries_;
};

}  // namespace inchwright::app
