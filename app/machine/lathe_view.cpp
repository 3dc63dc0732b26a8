#include "app/machine/lathe_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QPainter>
#include <QPushButton>
#include <algorithm>
#include <tuple>

#include "app/base/look.h"
#include "app/base/spoken_english.h"
#include "app/machine/fitting.h"
#include "app/machine/made_slip.h"
#include "core/kit/kit_of_part.h"
#include "core/say/kit_words.h"
#include "core/say/lathe_words.h"
#include "core/turned/cut_done.h"

namespace inchwright::app {
namespace {

QString asTyped(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

LatheView::LatheView(Desk& desk, QWidget* parent)
    : StepwiseView(desk, tr("At the lathe"), parent), tick_(new QPushButton(low_)) {
  setObjectName(QStringLiteral("atLathe"));
  tick_->setCheckable(true);
  layOut(nullptr, [this](QHBoxLayout& low) {
    low.addWidget(tick_);
    low.addSpacing(24);
  });
  connect(tick_, &QPushButton::clicked, this, &LatheView::tickNext);
  connect(&desk, &Desk::edited, this, &LatheView::follow);
  connect(&desk, &Desk::viewChanged, this, &LatheView::follow);
  cut_ = whereLeftOff();
  follow();
  setFocus();
}

int LatheView::cutCount() const {
  return desk_.lathe() == nullptr ? 0 : static_cast<int>(desk_.lathe()->cuts.size());
}

const Cut* LatheView::current() const {
  return cut_ < 0 || cut_ >= cutCount() ? nullptr
                                        : &desk_.lathe()->cuts[static_cast<std::size_t>(cut_)];
}

int LatheView::whereLeftOff() const {
  bool begun = false;
  int open = cutCount() - 1;
  for (int i = cutCount() - 1; i >= 0; --i) {
    const Cut& cut = desk_.lathe()->cuts[static_cast<std::size_t>(i)];
    const bool done = isCutDone(desk_.part(), desk_.setup().name, cut);
    begun = begun || done;
    if (!done) open = i;
  }
  return begun ? open : -1;
}

void LatheView::go(int cut) {
  cut_ = std::clamp(cut, -1, std::max(-1, cutCount() - 1));
  follow();
  setFocus();
}

void LatheView::tickNext() {
  const Cut* cut = current();
  if (cut == nullptr) return go(cut_ + 1);
  const bool done = isCutDone(desk_.part(), desk_.setup().name, *cut);
  const QString title = tr("Tick %1").arg(coreWords(cutWords(*cut), &desk_.part()));
  desk_.endMerge();
  desk_.applyPart(withCutDone(desk_.part(), desk_.setup().name, *cut, !done), title);
  if (!done) go(cut_ + 1);
}

void LatheView::follow() {
  cut_ = std::clamp(cut_, -1, std::max(-1, cutCount() - 1));
  const Cut* cut = current();
  const bool done = cut != nullptr && isCutDone(desk_.part(), desk_.setup().name, *cut);
  back_->setEnabled(cut_ > -1);
  next_->setEnabled(cut_ + 1 < cutCount());
  tick_->setEnabled(cut != nullptr);
  tick_->setChecked(done);
  tick_->setText(done ? tr("✓ &done") : tr("&Tick it"));
  // Only what is measured over one stretch has a size.
  const bool measured = cut != nullptr && cut->of.size() == 1 && cut->dia;
  made_->setEnabled(measured);
  said_->setText(cut == nullptr ? QString()
                                : withWholeFigures(noteLines(*cut).join(QStringLiteral(" · "))));
  if (!desk_.hasPart() || desk_.lathe() == nullptr) {
    head_->setText(tr("There is nothing to turn."));
  } else if (cut == nullptr) {
    head_->setText(tr("%1 · setup %2 · before the first cut")
                       .arg(asTyped(desk_.part().name), asTyped(desk_.setup().name)));
    setAccessibleDescription(firstLines().join(QLatin1Char(' ')));
  } else {
    head_->setText(tr("%1 · setup %2 · cut %3 of %4")
                       .arg(asTyped(desk_.part().name), asTyped(desk_.setup().name))
                       .arg(cut_ + 1)
                       .arg(cutCount()));
    QString figures = coreWords(cutWords(*cut), &desk_.part());
    if (cut->length) {
      figures +=
          tr(", %1 %2").arg(asTyped(desk_.lathe()->carriageLetter), asTyped(cut->length->text));
    }
    if (cut->dia) {
      figures += tr(", %1 %2").arg(asTyped(desk_.lathe()->crossLetter), asTyped(cut->dia->text));
    }
    setAccessibleDescription(figures);
  }
  update();
}

/// How the work is held, what the readouts count, and what to mind.
QStringList LatheView::firstLines() const {
  QStringList lines;
  const LatheWork* work = desk_.lathe();
  if (work == nullptr) return lines;
  lines << coreWords(heldWords(*work, latheFor(desk_.job(), {})))
        << (work->halved ? tr("%1 counts the radius") : tr("%1 counts the diameter"))
               .arg(asTyped(work->crossLetter));
  if (work->whole) lines << tr("Over both ends %1").arg(asTyped(work->whole->text));
  for (const std::string& one : latheWarnings(*work)) lines << tr("Mind: %1").arg(coreWords(one));
  const auto kit = kitOfPart(desk_.job(), desk_.part(), desk_.solution());
  for (const KitLine& one : kit.ok() ? kitLines(*kit, work->step) : std::vector<KitLine>{}) {
    if (one.found) continue;
    QString line = asTyped(one.place) + QStringLiteral(": ");
    if (!one.instead.empty()) line += coreWords(one.instead) + QStringLiteral("; ");
    lines << line + coreWords(one.words);
  }
  return lines;
}

/// What the row of the stretch says beside its figures.
QStringList LatheView::noteLines(const Cut& cut) const {
  QStringList notes;
  const LatheWork& work = *desk_.lathe();
  if (cut.op != CutOp::finish && cut.op != CutOp::bore && cut.op != CutOp::thread &&
      cut.op != CutOp::groove && cut.op != CutOp::knurl) {
    return notes;
  }
  for (const LatheRow& row : work.rows) {
    if (std::find(cut.of.begin(), cut.of.end(), row.id) == cut.of.end()) continue;
    const std::string note = latheNote(row, work.step);
    if (!note.empty()) notes << coreWords(note);
  }
  return notes;
}

void LatheView::showMade() {
  const Cut* cut = current();
  if (cut == nullptr || cut->of.size() != 1) return;
  MadeSlip(desk_, cut->of.front(), this).exec();
  setFocus();
}

void LatheView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(rect(), Look::now().sheet);
  painter.setPen(Look::now().pencil);
  if (const Cut* cut = current()) {
    paintCut(painter, *cut);
  } else {
    paintFirst(painter);
  }
}

void LatheView::paintFirst(QPainter& painter) const {
  const QRectF box = figuresBox();
  const QString lines = withWholeFigures(firstLines().join(QLatin1Char('\n')));
  painter.setFont(fittingLines(deskFont(), lines, box, mostFor(box)));
  painter.drawText(box, static_cast<int>(Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap), lines);
}

void LatheView::paintCut(QPainter& painter, const Cut& cut) const {
  const LatheWork& work = *desk_.lathe();
  const QRectF box = figuresBox();
  const QRectF heading(box.left(), box.top(), box.width(), box.height() * 0.22);
  const QString what = withWholeFigures(coreWords(cutWords(cut), &desk_.part()));
  painter.setFont(fittingLines(deskFont(), what, heading, 96));
  painter.drawText(heading, static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap),
                   what);
  // The letters stand below one another, and so do the ends of the figures.
  std::vector<std::tuple<QString, QString>> lines;
  if (cut.length) lines.emplace_back(asTyped(work.carriageLetter), asTyped(cut.length->text));
  if (cut.dia) lines.emplace_back(asTyped(work.crossLetter), asTyped(cut.dia->text));
  if (cut.topSlide) {
    lines.emplace_back(tr("top slide"),
                       QLocale::c().toString(*cut.topSlide, 'f', 3) + QStringLiteral("°"));
  }
  const bool draft = desk_.solution().isDraft();
  if (draft) lines.emplace_back(QString(), tr("DRAFT"));
  if (lines.empty()) return;
  const QRectF rest(box.left(), heading.bottom() + 8, box.width(),
                    box.bottom() - heading.bottom() - 8);
  const qreal each = rest.height() / std::max(2, static_cast<int>(lines.size()));
  QFont font = deskFont();
  font.setPixelSize(400);
  for (const auto& [letter, figure] : lines) {
    const QFont one = fitting(deskFont(), letter + QStringLiteral("  ") + figure,
                              QSizeF(rest.width(), each * 0.92));
    font.setPixelSize(std::min(font.pixelSize(), one.pixelSize()));
  }
  painter.setFont(font);
  // A figure stands beside its letter, however wide the screen is.
  const QFontMetricsF metrics(font);
  qreal letters = 0, wide = 0;
  for (const auto& [letter, figure] : lines) {
    letters = std::max(letters, metrics.horizontalAdvance(letter));
    wide = std::max(wide, metrics.horizontalAdvance(figure));
  }
  const qreal gap = metrics.horizontalAdvance(QStringLiteral("0"));
  const qreal taken = std::min(rest.width(), letters + gap + wide);
  qreal top = rest.top();
  for (const auto& [letter, figure] : lines) {
    const QRectF line(rest.left(), top, taken, each);
    painter.setPen(letter.isEmpty() ? Look::now().red : Look::now().pencil);
    painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter, letter);
    painter.drawText(line, Qt::AlignRight | Qt::AlignVCenter, figure);
    top += each;
  }
}

}  // namespace inchwright::app

#include "moc_lathe_view.cpp"
