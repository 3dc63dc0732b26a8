#include "app/sheet/stack_bars.h"

#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/base/look.h"
#include "core/measure/limits.h"
#include "core/say/stack_words.h"

namespace inchwright::app {
namespace {

QString shownAt(std::int64_t ticks, const Step& step) {
  return QString::fromStdString(showAtStep(Rational(ticks), step).text);
}

/// Rounded up: how far something may be off at most.
QString mostAt(std::int64_t ticks, const Step& step) {
  return QString::fromStdString(showOutwards(Length(), Length::ticks(ticks), step).high.text);
}

/// `±0.0040`, or `+0.0020 −0.0000` where the two differ.
QString limitsOf(const StackMember& member, const Step& step) {
  const std::int64_t plus = member.high - member.nominal;
  const std::int64_t minus = member.nominal - member.low;
  if (plus == minus) return QStringLiteral("±") + mostAt(plus, step);
  const auto signedFigure = [&](std::int64_t ticks) {
    return (ticks < 0 ? QStringLiteral("−") : QStringLiteral("+")) +
           shownAt(ticks < 0 ? -ticks : ticks, step);
  };
  const ShownLimits ends = showOutwards(Length::ticks(-minus), Length::ticks(plus), step);
  return signedFigure(ends.high.value.ticks()) + QLatin1Char(' ') +
         signedFigure(ends.low.value.ticks());
}

/// Both ends of what may come out at worst, rounded outwards.
std::pair<QString, QString> worstAt(const Span& worst, const Step& step) {
  const ShownLimits ends = showOutwards(Length::ticks(worst.low), Length::ticks(worst.high), step);
  return {QString::fromStdString(ends.low.text), QString::fromStdString(ends.high.text)};
}

/// How far from its lettered length a stack or a member may come out, in ticks.
struct Stray {
  double low = 0;
  double high = 0;
};

Stray strayOf(const StackMember& member) {
  const double factor = member.factor.toDouble();
  const double a = factor * static_cast<double>(member.low - member.nominal);
  const double b = factor * static_cast<double>(member.high - member.nominal);
  return {std::min(a, b), std::max(a, b)};
}

class StackPainter {
 public:
  StackPainter(QPainter* painter, const Stacked& stacked, QRectF box)
      : painter_(painter), stacked_(stacked), box_(box), metrics_(deskFont()) {
    line_ = metrics_.height() * 1.25;
    share_ = metrics_.horizontalAdvance(ofWorst()) + line_ / 2;
    // As much as the names need, but the bars keep their room, with the figures that stand there.
    names_ = line_ * 9;
    const QFontMetricsF figure(figures());
    for (const StackedWay& way : stacked_.ways) {
      least_ =
          std::max(least_, metrics_.horizontalAdvance(tr("root sum square")) +
                               metrics_.horizontalAdvance(rangeOf(way.stack.worst)) + line_ * 1.2);
      const auto [low, high] = worstAt(way.stack.worst, stacked_.step);
      scale_ = std::max(scale_, figure.horizontalAdvance(low + high) + line_ * 0.7);
      for (const StackMember& member : way.stack.members) {
        names_ = std::max(names_, metrics_.horizontalAdvance(nameOf(member)) +
                                      metrics_.horizontalAdvance(limitsOf(member, stacked_.step)) +
                                      line_ * 1.2);
      }
    }
    names_ = std::min({names_, box_.width() * 0.55, box_.width() - share_ - scale_});
    bars_ = QRectF(box_.left() + names_, box_.top(), box_.width() - names_ - share_, 0);
    for (const StackedWay& way : stacked_.ways) {
      const double nominal = way.stack.nominal.toDouble();
      widest_ = std::max({widest_, std::abs(static_cast<double>(way.stack.worst.low) - nominal),
                          std::abs(static_cast<double>(way.stack.worst.high) - nominal)});
      for (const auto& limit : {stacked_.least, stacked_.greatest}) {
        if (limit) {
          widest_ = std::max(widest_, std::abs(static_cast<double>(limit->ticks()) - nominal));
        }
      }
      for (const StackMember& member : way.stack.members) {
        const Stray stray = strayOf(member);
        widest_ = std::max({widest_, std::abs(stray.low), std::abs(stray.high)});
      }
    }
  }

  /// Narrower than that nothing is told whole.
  qreal leastWidth() const { return least_ + scale_ + share_; }

  /// Draws when there is a painter, and says where it ended.
  qreal paint() {
    y_ = box_.top();
    for (const StackedWay& way : stacked_.ways) paintWay(way);
    return y_;
  }

 private:
  qreal xOf(double stray) const {
    return bars_.center().x() + stray / widest_ * bars_.width() * 0.46;
  }

  void paintWay(const StackedWay& way) {
    const Stack& stack = way.stack;
    heading(way);
    const qreal top = y_;
    for (const StackMember& member : stack.members) paintMember(member);
    const qreal members = y_;
    y_ += line_ * 0.3;
    paintSums(way);
    // The lengths as lettered, from which everything strays.
    if (painter_) {
      painter_->setPen(QPen(look_.pencil, kFineLine, Qt::DashLine));
      painter_->drawLine(QPointF(xOf(0), top), QPointF(xOf(0), y_ - line_));
      painter_->setPen(QPen(look_.pencil, kFirmLine));
      painter_->drawLine(QPointF(box_.left(), members + line_ * 0.15),
                         QPointF(box_.right(), members + line_ * 0.15));
    }
    y_ += line_ * 0.9;
  }

  void heading(const StackedWay& way) {
    const QString nominal =
        QString::fromStdString(showAtStep(way.stack.nominal, stacked_.step).text);
    if (painter_) {
      painter_->setFont(deskFont(1.1));
      painter_->setPen(look_.blue);
      painter_->drawText(QRectF(box_.left(), y_, box_.width(), line_ * 1.2),
                         Qt::AlignLeft | Qt::AlignVCenter, way.title);
      painter_->setPen(look_.pencil);
      painter_->setFont(figures(1.1));
      painter_->drawText(QRectF(bars_.left(), y_, bars_.width(), line_ * 1.2), Qt::AlignCenter,
                         nominal);
      // What the figures below it are shares of.
      painter_->setFont(deskFont());
      painter_->setPen(look_.faint);
      painter_->drawText(QRectF(bars_.right(), y_, share_, line_ * 1.2),
                         Qt::AlignRight | Qt::AlignVCenter, ofWorst());
    }
    y_ += line_ * 1.35;
  }

  static QString ofWorst() { return StackBars::tr("of worst"); }

  static QString nameOf(const StackMember& member) {
    QString text = (member.sign() < 0 ? QStringLiteral("− ") : QStringLiteral("+ ")) +
                   QString::fromStdString(memberName(member));
    if (!member.text.empty()) text += QStringLiteral("  ") + QString::fromStdString(member.text);
    if (!member.part.empty()) text += QStringLiteral("  · ") + QString::fromStdString(member.part);
    return text;
  }

  void name(const QString& text, const QString& figure) {
    if (!painter_) return;
    painter_->setPen(look_.pencil);
    painter_->setFont(deskFont());
    const qreal room = metrics_.horizontalAdvance(figure) + line_ * 0.7;
    const QString fitting =
        metrics_.elidedText(text, Qt::ElideRight, static_cast<int>(names_ - room));
    painter_->drawText(QRectF(box_.left(), y_, names_, line_), Qt::AlignLeft | Qt::AlignVCenter,
                       fitting);
    painter_->drawText(QRectF(box_.left(), y_, names_ - line_ * 0.4, line_),
                       Qt::AlignRight | Qt::AlignVCenter, figure);
  }

  void paintMember(const StackMember& member) {
    name(nameOf(member), limitsOf(member, stacked_.step));
    if (painter_) {
      const Stray stray = strayOf(member);
      const QRectF bar(QPointF(xOf(stray.low), y_ + line_ * 0.24),
                       QPointF(xOf(stray.high), y_ + line_ * 0.76));
      painter_->fillRect(bar, look_.wash);
      painter_->setPen(QPen(look_.blue, kFirmLine));
      painter_->drawRect(bar);
      painter_->setPen(look_.pencil);
      painter_->drawText(QRectF(bars_.right(), y_, share_, line_),
                         Qt::AlignRight | Qt::AlignVCenter,
                         QStringLiteral("%1 %").arg(100 * member.worstShare, 0, 'f', 0));
    }
    y_ += line_;
  }

  void paintSums(const StackedWay& way) {
    const Stack& stack = way.stack;
    const double nominal = stack.nominal.toDouble();
    const auto strayOfSpan = [&](const Span& span) {
      return Stray{static_cast<double>(span.low) - nominal,
                   static_cast<double>(span.high) - nominal};
    };
    const qreal top = y_;
    name(tr("at worst"), rangeOf(stack.worst));
    bracket(strayOfSpan(stack.worst), !stacked_.keeps(stack.worst));
    y_ += line_;
    name(tr("root sum square"), rangeOf(stack.rss));
    bracket(strayOfSpan(stack.rss), !stacked_.keeps(stack.rss));
    y_ += line_;
    const QString many = tr("%1 at random").arg(QLocale().toString(way.simulation.runs));
    name(many, {});
    histogram(way.simulation, nominal);
    y_ += line_ * 2.6;
    limits(nominal, top);
    ends(strayOfSpan(stack.worst), stack.worst);
    y_ += line_;
  }

  static QString tr(const char* text) { return StackBars::tr(text); }

  QString rangeOf(const Span& span) const {
    return QStringLiteral("±") + mostAt((span.width() + 1) / 2, stacked_.step);
  }

  /// A span with its ends turned up; torn where it leaves what is required.
  void bracket(const Stray& stray, bool outside) {
    if (!painter_) return;
    const qreal y = y_ + line_ / 2, up = line_ * 0.3;
    const qreal left = xOf(stray.low), right = xOf(stray.high);
    painter_->setPen(QPen(outside ? look_.red : look_.pencil, kFirmLine));
    painter_->drawLine(QPointF(left, y), QPointF(right, y));
    for (const qreal x : {left, right}) painter_->drawLine(QPointF(x, y - up), QPointF(x, y + up));
    if (!outside) return;
    painter_->setFont(deskFont());
    painter_->drawText(QRectF(bars_.right(), y_, share_, line_), Qt::AlignRight | Qt::AlignVCenter,
                       QStringLiteral("≠"));
  }

  void histogram(const Simulation& simulation, double nominal) {
    if (!painter_) return;
    const qreal bottom = y_ + line_ * 2.5, height = line_ * 2.3;
    const std::uint64_t most = std::max<std::uint64_t>(
        1, *std::max_element(simulation.bars.begin(), simulation.bars.end()));
    const double width = static_cast<double>(simulation.range.width()) / Simulation::kBars;
    for (std::size_t i = 0; i < Simulation::kBars; ++i) {
      const double low =
          static_cast<double>(simulation.range.low) - nominal + static_cast<double>(i) * width;
      const qreal tall =
          height * static_cast<double>(simulation.bars[i]) / static_cast<double>(most);
      if (tall < 0.5) continue;
      const bool outside =
          (stacked_.least &&
           low + nominal + width / 2 < static_cast<double>(stacked_.least->ticks())) ||
          (stacked_.greatest &&
           low + nominal + width / 2 > static_cast<double>(stacked_.greatest->ticks()));
      const QRectF bar(QPointF(xOf(low), bottom - tall), QPointF(xOf(low + width), bottom));
      painter_->fillRect(bar, outside ? QBrush(look_.red, Qt::BDiagPattern) : QBrush(look_.faint));
    }
    painter_->setPen(QPen(look_.pencil, kFineLine));
    painter_->drawLine(QPointF(bars_.left(), bottom), QPointF(bars_.right(), bottom));
  }

  /// What is required, across all the sums.
  void limits(double nominal, qreal top) {
    if (!painter_) return;
    const auto mark = [&](const std::optional<Length>& limit, const QString& word, bool toLeft) {
      if (!limit) return;
      const qreal x = xOf(static_cast<double>(limit->ticks()) - nominal);
      painter_->setPen(QPen(look_.red, kFirmLine, Qt::DashDotLine));
      painter_->drawLine(QPointF(x, top), QPointF(x, y_));
      painter_->setFont(deskFont(0.85));
      const QString text = word + QLatin1Char(' ') + shownAt(limit->ticks(), stacked_.step);
      const qreal width = metrics_.horizontalAdvance(text);
      painter_->drawText(QRectF(toLeft ? x - width - 4 : x + 4, y_ - line_ * 1.05, width, line_),
                         (toLeft ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, text);
    };
    mark(stacked_.least, tr("least"), true);
    mark(stacked_.greatest, tr("greatest"), false);
  }

  /// The ends of the worst case in figures, under the scale.
  void ends(const Stray& stray, const Span& worst) {
    if (!painter_) return;
    painter_->setFont(figures());
    painter_->setPen(look_.pencil);
    const auto [low, high] = worstAt(worst, stacked_.step);
    const QFontMetricsF metrics(painter_->font());
    const auto put = [&](qreal left, const QString& text) {
      painter_->drawText(QRectF(left, y_, metrics.horizontalAdvance(text) + 4, line_),
                         Qt::AlignCenter, text);
    };
    const qreal lowWide = metrics.horizontalAdvance(low) + 4;
    const qreal highWide = metrics.horizontalAdvance(high) + 4;
    const qreal lowAt = xOf(stray.low) - lowWide / 2;
    if (worst.width() == 0) return put(lowAt, low);
    // Each under its end, or side by side where those lie close together.
    const qreal apart = line_ / 3;
    const qreal over = std::max(0.0, lowAt + lowWide + apart - (xOf(stray.high) - highWide / 2));
    const qreal most = box_.right() - highWide - apart - lowWide;
    const qreal left = std::max(bars_.left(), std::min(lowAt - over / 2, most));
    put(left, low);
    put(std::max(left + lowWide + apart,
                 std::min(xOf(stray.high) - highWide / 2 + over / 2, box_.right() - highWide)),
        high);
  }

  QPainter* painter_;
  const Stacked& stacked_;
  QRectF box_;
  QRectF bars_;
  QFontMetricsF metrics_;
  const Look& look_ = Look::now();
  qreal line_ = 0;
  qreal names_ = 0;
  qreal least_ = 0;  ///< width that the shortest of the names need
  qreal scale_ = 0;  ///< width that the figures under the bars need
  qreal share_ = 0;
  qreal y_ = 0;
  double widest_ = 1;
};

constexpr int kEdge = 4;
constexpr qreal kMuch = 1e4;  // pixels, wider than any screen

}  // namespace

StackBars::StackBars(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setAccessibleName(tr("The stack as bars"));
}

void StackBars::show(std::optional<Stacked> stacked) {
  stacked_ = std::move(stacked);
  QStringList words;
  if (stacked_) {
    for (const StackedWay& way : stacked_->ways) {
      const auto [low, high] = worstAt(way.stack.worst, stacked_->step);
      words << way.title + QStringLiteral(": ") + tr("%1 to %2 at worst").arg(low, high);
    }
  }
  setAccessibleDescription(words.join(QStringLiteral("; ")));
  updateGeometry();
  update();
}

int StackBars::heightForWidth(int width) const {
  if (!stacked_) return 0;
  StackPainter measuring(nullptr, *stacked_, QRectF(kEdge, 0, width - 2 * kEdge, 0));
  return static_cast<int>(std::ceil(measuring.paint()));
}

QSize StackBars::minimumSizeHint() const {
  if (!stacked_) return {};
  const StackPainter measuring(nullptr, *stacked_, QRectF(0, 0, kMuch, 0));
  return {static_cast<int>(std::ceil(measuring.leastWidth())) + 2 * kEdge, 0};
}

QSize StackBars::sizeHint() const {
  const int width = fontMetrics().averageCharWidth() * 60;
  return {width, heightForWidth(width)};
}

void StackBars::paintEvent(QPaintEvent*) {
  if (!stacked_) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  StackPainter(&painter, *stacked_, QRectF(kEdge, 0, width() - 2 * kEdge, height())).paint();
}

}  // namespace inchwright::app

#include "moc_stack_bars.cpp"
