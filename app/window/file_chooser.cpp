#include "app/window/file_chooser.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QGridLayout>
#include <QLabel>

#include "app/window/small_picture.h"

namespace inchwright::app {
namespace {

constexpr QSize kBeside(220, 260);  // device-independent pixels

}  // namespace

QString chooseFile(QWidget* window, const QString& title, const QString& folder,
                   const QString& filter) {
  QFileDialog dialog(window, title, folder, filter);
  dialog.setFileMode(QFileDialog::ExistingFile);
  dialog.setOption(QFileDialog::DontUseNativeDialog);
  auto* picture = new QLabel(&dialog);
  picture->setObjectName(QStringLiteral("beside"));
  picture->setFixedSize(kBeside);
  picture->setAlignment(Qt::AlignCenter);
  picture->setAccessibleName(
      QCoreApplication::translate("Asking", "A small picture of the file chosen"));
  if (auto* grid = qobject_cast<QGridLayout*>(dialog.layout())) {
    grid->addWidget(picture, 1, grid->columnCount());
  }
  QObject::connect(&dialog, &QFileDialog::currentChanged, picture, [picture](const QString& file) {
    picture->setPixmap(smallPicture(file, kBeside, picture->devicePixelRatioF()));
  });
  return dialog.exec() == QDialog::Accepted ? dialog.selectedFiles().value(0) : QString();
}

}  // namespace inchwright::app
