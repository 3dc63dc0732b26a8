#include "app/window/asking.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <algorithm>
#include <vector>

#include "app/session/preferences.h"
#include "app/window/file_chooser.h"

namespace inchwright::app {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("Asking", text);
}

QString filter() {
  return tr("Inchwright jobs (*.inchwright);;All files (*)");
}

/// Where the work lies that one had in hand last.
QString folderOfWork() {
  const QStringList recent = Preferences::recentFiles();
  return recent.isEmpty() ? QDir::homePath() : QFileInfo(recent.front()).absolutePath();
}

Asking::Answer askUnsaved(QWidget* window, const QString& name) {
  QMessageBox box(QMessageBox::NoIcon, tr("Unsaved work"),
                  tr("%1 has work in it that is not saved.").arg(name), QMessageBox::NoButton,
                  window);
  auto* save = box.addButton(tr("&Save it"), QMessageBox::AcceptRole);
  auto* leave = box.addButton(tr("&Throw it away"), QMessageBox::DestructiveRole);
  auto* stay = box.addButton(tr("St&ay"), QMessageBox::RejectRole);
  box.setDefaultButton(save);
  box.setEscapeButton(stay);
  box.exec();
  return box.clickedButton() == save    ? Asking::Answer::save
         : box.clickedButton() == leave ? Asking::Answer::leave
                                        : Asking::Answer::stay;
}

int choose(QWidget* window, const Asking::Question& question) {
  QMessageBox box(QMessageBox::NoIcon, QStringLiteral("Inchwright"), question.text,
                  QMessageBox::NoButton, window);
  std::vector<QAbstractButton*> buttons;
  for (const QString& answer : question.answers) {
    // All alike to the style, so that they stand in the order in which they were thought of.
    buttons.push_back(box.addButton(answer, QMessageBox::ActionRole));
  }
  box.setDefaultButton(
      qobject_cast<QPushButton*>(buttons[static_cast<std::size_t>(question.usual)]));
  box.setEscapeButton(buttons[static_cast<std::size_t>(question.escape)]);
  box.exec();
  const auto clicked = std::find(buttons.begin(), buttons.end(), box.clickedButton());
  return clicked == buttons.end() ? question.escape : static_cast<int>(clicked - buttons.begin());
}

}  // namespace

Asking askingByDialogs(QWidget* window) {
  Asking asking;
  asking.fileToOpen = [window] {
    return chooseFile(window, tr("Open a job"), folderOfWork(), filter());
  };
  asking.pictureToOpen = [window] {
    return chooseFile(window, tr("A picture of the print"), folderOfWork(),
                      tr("Pictures (*.png *.jpg *.jpeg *.tif *.tiff *.webp *.bmp *.pdf *.heic "
                         "*.heif *.avif);;All files (*)"));
  };
  // Whether something is replaced is asked by whoever writes, who knows the name and what is there.
  asking.fileToSave = [window](const QString& suggested) {
    return QFileDialog::getSaveFileName(window, tr("Save the job"), suggested, filter(), nullptr,
                                        QFileDialog::DontConfirmOverwrite);
  };
  asking.fileForSheet = [window](const QString& suggested) {
    const QString ending = QFileInfo(suggested).suffix();
    return QFileDialog::getSaveFileName(window, tr("Write my sheet"), suggested,
                                        QStringLiteral("%1 (*.%2)").arg(ending.toUpper(), ending),
                                        nullptr, QFileDialog::DontConfirmOverwrite);
  };
  asking.unsavedWork = [window](const QString& name) { return askUnsaved(window, name); };
  asking.choose = [window](const Asking::Question& question) { return choose(window, question); };
  asking.tell = [window](const QString& what) {
    QMessageBox box(QMessageBox::NoIcon, QStringLiteral("Inchwright"), what, {}, window);
    box.addButton(tr("&Good"), QMessageBox::AcceptRole);
    box.exec();
  };
  return asking;
}

}  // namespace inchwright::app
