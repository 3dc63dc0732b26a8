#include "app/window/help_page.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>
#include <functional>
#include <utility>

#include "app/base/look.h"

namespace inchwright::app {
namespace {

QString line(const QString& key, const QString& what) {
  return QStringLiteral("<tr><td style='padding:2px 18px 2px 0'><b>%1</b></td><td>%2</td></tr>")
      .arg(key.toHtmlEscaped(), what.toHtmlEscaped());
}

QString title(const QString& text) {
  return QStringLiteral("<h3>%1</h3>").arg(text.toHtmlEscaped());
}

QString withoutMnemonic(QString text) {
  return text.remove(QLatin1Char('&'));
}

}  // namespace

HelpPage::HelpPage(const QMenuBar* menus, QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Every key"));
  setAccessibleName(windowTitle());
  auto* page = new QTextBrowser(this);
  page->setAccessibleName(tr("Keys and words"));
  page->setFont(deskFont());
  page->setHtml(QStringLiteral("<table width='100%'><tr><td width='50%'>%1</td><td>%2</td></tr>"
                               "</table>")
                    .arg(keysOfMenus(menus), whatCanBeTyped()));
  auto* done = new QPushButton(tr("&Done"), this);
  done->setProperty("firm", true);
  connect(done, &QPushButton::clicked, this, &QDialog::accept);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(22, 16, 22, 16);
  column->addWidget(page, 1);
  column->addWidget(done, 0, Qt::AlignRight);
  const int unit = fontMetrics().lineSpacing();
  resize(unit * 58, unit * 38);
}

QString HelpPage::keysOfMenus(const QMenuBar* menus) const {
  QString html;
  for (const QAction* top : menus->actions()) {
    if (top->menu() == nullptr) continue;
    QString lines;
    const std::function<void(const QMenu*, const QString&)> walk = [&](const QMenu* menu,
                                                                       const QString& before) {
      for (const QAction* action : menu->actions()) {
        const QString text = before + withoutMnemonic(action->text());
        if (action->menu() != nullptr) {
          walk(action->menu(), text + QStringLiteral(": "));
        } else if (!action->shortcut().isEmpty()) {
          lines +=
              line(QKeySequence::listToString(action->shortcuts(), QKeySequence::NativeText), text);
        }
      }
    };
    walk(top->menu(), {});
    if (!lines.isEmpty()) {
      html += title(withoutMnemonic(top->text())) + QStringLiteral("<table>%1</table>").arg(lines);
    }
  }
  return html;
}

QString HelpPage::whatCanBeTyped() const {
  const std::pair<const char*, QString> hands[] = {
      {"Alt+L", tr("look: choose, move, rename, delete")},
      {"Alt+T", tr("trace: then the letter of what it is")},
      {"Alt+R", tr("read a chain")},
      {"Alt+I  Alt+M  Alt+E", tr("in line, midway, equal spaces")},
      {"Alt+Z", tr("zero")},
      {"Alt+K", tr("stack")},
      {"Alt+G", tr("read again, blind")},
      {"Alt+F", tr("always from the first place chosen")},
      {"Alt+O", tr("the next axis: X, Y, Z")},
      {"Alt+D", tr("the doubts; arrows walk in them")},
      {"Alt+S", tr("read the suspected figure so")},
      {"Alt+A", tr("accept the doubt, or take that back")},
      {"Tab", tr("the next thing on the desk")},
      {"Enter", tr("takes the line, or what is offered when it is empty")},
      {"Escape", tr("one step back")},
      {"F10", tr("the menus")}};
  const std::pair<const char*, QString> lines[] = {
      {"L A 3/8", tr("a reading from L to A")},
      {"x A B 1 3/16", tr("the same with its axis")},
      {"edge L left", tr("an outer side; edge S x is a step across X")},
      {"hole A 1/4 ream", tr("a hole; 3/16 deep 1/2, 10-32 tap")},
      {"slot S x 1/4 by 1", tr("a slot along X, width by length")},
      {"ring G 6 on 2 1/2 drill 1/8", tr("holes on a circle")},
      {"row D x 5 holes pitch 9/16 drill 1/8", tr("holes in a row")},
      {"in line y A B", tr("A and B share their Y")},
      {"midway y A F K", tr("A half way from F to K")},
      {"zero x middle L R stock", tr("zero in the middle of the stock")},
      {"stock left 1/16", tr("still to come off")},
      {"rename A B", tr("and delete A")}};
  const std::pair<const char*, QString> print[] = {
      {"Page Up, Page Down", tr("the next place on their print, the next page of my sheet")},
      {"arrows", tr("nudge what is chosen on their print; move my sheet")},
      {"Home", tr("all of it")}};
  const std::pair<const char*, QString> machine[] = {
      {"Space", tr("tick the next tool; behind the last, go on")},
      {"arrows, Home", tr("the next place, the one before, the first")},
      {"Alt+X  Alt+Y", tr("what was measured")},
      {"Escape", tr("back to the desk")}};
  QString html = title(tr("The hands"));
  const auto table = [&html](const auto& rows) {
    html += QStringLiteral("<table>");
    for (const auto& [key, what] : rows) html += line(QString::fromUtf8(key), what);
    html += QStringLiteral("</table>");
  };
  table(hands);
  html += title(tr("What can be typed"));
  table(lines);
  html += title(tr("On the two sheets"));
  table(print);
  html += title(tr("At the machine"));
  table(machine);
  return html;
}

}  // namespace inchwright::app

#include "moc_help_page.cpp"
