#include "app/window/outputs.h"

#include <QClipboard>
#include <QCoreApplication>
#include <QFileInfo>
#include <QGuiApplication>
#include <QMimeData>
#include <QPrinter>
#include <QStringList>

#include "app/base/sheet_date.h"
#include "app/render/faces.h"
#include "app/render/render.h"
#include "app/window/print_preview.h"
#include "app/words/sheet_file.h"
#include "core/document/atomic_file.h"
#include "core/say/lathe_words.h"
#include "core/say/making_words.h"
#include "core/say/setup_words.h"
#include "core/say/table_csv.h"

namespace inchwright::app {
namespace {

constexpr double kPixelsPerMm = 300 / 25.4;

QString ownWords(const std::string& text) {
  return QString::fromStdString(text);
}

struct Drawn {
  QString file;
  QByteArray bytes;
};

QString numbered(const QString& file, std::size_t page, std::size_t pages) {
  if (pages == 1) return file;
  const QFileInfo info(file);
  return info.path() + QLatin1Char('/') + info.completeBaseName() +
         QStringLiteral("-%1.").arg(page + 1) + info.suffix();
}

Error nothingYet(const Desk& desk) {
  if (desk.tableError()) return *desk.tableError();
  return {ErrorCode::badRequest, "there is no sheet yet: nothing is placed", {}};
}

Result<std::vector<Drawn>> drawnPictures(const Desk& desk, const QString& file, bool svg) {
  const std::vector<Page>& pages = desk.sheet()->pages();
  const QString title = ownWords(desk.job().title);
  std::vector<Drawn> all;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    auto picture = svg ? renderSvg(pages[i], title) : renderPng(pages[i], kPixelsPerMm);
    if (!picture.ok()) return picture.error();
    all.push_back({numbered(file, i, pages.size()), std::move(picture).value()});
  }
  return all;
}

/// The job on the desk as the words have it; of one part alone, or of all.
OpenedJob openedOnDesk(const Desk& desk, std::optional<std::size_t> alone) {
  OpenedJob opened;
  opened.job = desk.job();
  opened.job.shop = shopFor(opened.job.shop, desk.ownShop());
  const std::span<const Solution> solutions = desk.solutions();
  for (std::size_t i = 0; i < solutions.size(); ++i) {
    if (!alone || *alone == i) opened.solved.push_back({i, solutions[i]});
  }
  return opened;
}

/// The setup on the desk, for a tablet.
Result<std::vector<Drawn>> drawnForTablet(const Desk& desk, const QString& file) {
  const OpenedJob opened = openedOnDesk(desk, static_cast<std::size_t>(desk.partIndex()));
  Arguments setup;
  if (!desk.part().setups.empty()) setup.options.emplace("--setup", desk.setup().name);
  const auto planned = planJob(setup, opened);
  if (!planned.ok()) return planned.error();
  const auto options = optionsOf(opened, *planned, desk.sheetOptions(), desk.showsCloseness());
  if (!options.ok()) return options.error();
  return std::vector<Drawn>{
      {file, QByteArray::fromStdString(tabletOf(opened, *planned, *options))}};
}

Result<std::vector<Drawn>> drawnAs(const Desk& desk, const QString& file) {
  if (!desk.isWorkedOut()) return nothingYet(desk);
  const QString ending = QFileInfo(file).suffix().toLower();
  if (ending == QLatin1String("csv")) {
    const std::string csv = desk.lathe() != nullptr ? latheAsCsv({*desk.lathe()})
                                                    : tablesAsCsv({{desk.part(), *desk.table()}});
    return std::vector<Drawn>{{file, QByteArray::fromStdString(csv)}};
  }
  if (ending == QLatin1String("html")) return drawnForTablet(desk, file);
  if (ending == QLatin1String("svg")) return drawnPictures(desk, file, true);
  if (ending == QLatin1String("png")) return drawnPictures(desk, file, false);
  if (ending != QLatin1String("pdf")) {
    return Error{ErrorCode::badRequest, "the name must end in .pdf, .svg, .png, .html or .csv",
                 file.toStdString()};
  }
  auto pdf = renderPdf(desk.sheet()->pages(), ownWords(desk.job().title));
  if (!pdf.ok()) return pdf.error();
  return std::vector<Drawn>{{file, std::move(pdf).value()}};
}

/// The cells of each row.
std::vector<QStringList> cellsOf(const Part& part, const SetupTable& table) {
  const SetupWords words = setupWords(part, table);
  std::vector<QStringList> lines;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const TableRow& row = table.rows[i];
    lines.push_back({ownWords(row.id), ownWords(signedText(row.x)), ownWords(signedText(row.y)),
                     ownWords(words.rows[i].size), ownWords(stepsWords(row, table.step.unit)),
                     ownWords(words.rows[i].note)});
  }
  return lines;
}

/// What is copied of a setup: as text and as HTML.
struct Copied {
  QStringList headings;
  std::vector<QStringList> cells;
  QString caption;
};

QStringList headings() {
  const auto tr = [](const char* text) { return QCoreApplication::translate("Outputs", text); };
  return {tr("id"), tr("X"), tr("Y"), tr("size"), tr("make"), tr("note")};
}

Copied copiedOf(const Part& part, const SetupTable& table) {
  return {headings(), cellsOf(part, table), ownWords(zeroLine(table, English::uk))};
}

Copied copiedOf(const Job& job, const LatheWork& work) {
  const auto tr = [](const char* text) { return QCoreApplication::translate("Outputs", text); };
  Copied copied{{tr("id"), ownWords(lengthHeading(work)), ownWords(diaHeading(work)), tr("note")},
                {},
                ownWords(heldWords(work, latheFor(job, {})))};
  for (const LatheRow& row : work.rows) {
    copied.cells.push_back({ownWords(row.id), ownWords(row.length.text),
                            row.dia ? ownWords(row.dia->text) : QString(),
                            ownWords(latheNote(row, work.step))});
  }
  return copied;
}

QString asTsv(const Copied& copied) {
  QStringList lines{copied.headings.join(QLatin1Char('\t'))};
  for (QStringList line : copied.cells) {
    // A tab or a line end inside a cell would make two of it.
    for (QString& cell : line) cell = cell.simplified();
    lines << line.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

QString asHtml(const Copied& copied) {
  const auto line = [](const QStringList& texts, const QString& tag) {
    QString html = QStringLiteral("<tr>");
    for (const QString& text : texts) {
      html += QStringLiteral("<%1>%2</%1>").arg(tag, text.toHtmlEscaped());
    }
    return html + QStringLiteral("</tr>\n");
  };
  QString html =
      QStringLiteral("<table>\n<caption>%1</caption>\n").arg(copied.caption.toHtmlEscaped());
  html += line(copied.headings, QStringLiteral("th"));
  for (const QStringList& one : copied.cells) html += line(one, QStringLiteral("td"));
  return html + QStringLiteral("</table>\n");
}

}  // namespace

namespace {

/// Puts what is drawn where it belongs, once whatever is there may be replaced.
Result<QStringList> put(const std::vector<Drawn>& drawn, const MayReplace& mayReplace) {
  QStringList there, written;
  for (const Drawn& one : drawn) {
    if (QFileInfo::exists(one.file)) there << one.file;
  }
  if (!there.isEmpty() && !mayReplace(there)) return written;
  for (const Drawn& one : drawn) {
    const auto done =
        replaceFile(one.file.toStdString(),
                    {one.bytes.constData(), static_cast<std::size_t>(one.bytes.size())});
    if (!done.ok()) return done.error();
    written << one.file;
  }
  return written;
}

}  // namespace

Result<QStringList> exportSheet(Desk& desk, const QString& file, const MayReplace& mayReplace) {
  const auto drawn = drawnAs(desk, file);
  if (!drawn.ok()) return drawn.error();
  auto written = put(*drawn, mayReplace);
  const bool csv = QFileInfo(file).suffix().toLower() == QLatin1String("csv");
  if (written.ok() && !written->isEmpty() && !csv) desk.notePrinted(sheetDate());
  return written;
}

Result<QStringList> exportPaper(const Desk& desk, const std::vector<PageKind>& kinds,
                                const QString& file, const MayReplace& mayReplace) {
  const OpenedJob opened = openedOnDesk(desk, std::nullopt);
  const auto planned = planJob({}, opened);
  if (!planned.ok()) return planned.error();
  SheetOptions common = desk.sheetOptions();
  common.isNoted = false;
  const auto options = optionsOf(opened, *planned, common, false);
  if (!options.ok()) return options.error();
  const auto pages = pagesOf(kinds, opened, *planned, *options);
  if (!pages.ok()) return pages.error();
  auto pdf = renderPdf(*pages, ownWords(desk.job().title));
  if (!pdf.ok()) return pdf.error();
  return put({{file, std::move(pdf).value()}}, mayReplace);
}

bool isOurSheet(const QString& file) {
  return mayReplace(file.toStdString(), false).ok();
}

Result<int> copyTable(const Desk& desk) {
  if (!desk.isWorkedOut()) return nothingYet(desk);
  const Copied copied = desk.lathe() != nullptr ? copiedOf(desk.job(), *desk.lathe())
                                                : copiedOf(desk.part(), *desk.table());
  auto* data = new QMimeData;
  const QString text = asTsv(copied);
  data->setText(text);
  data->setData(QStringLiteral("text/tab-separated-values"), text.toUtf8());
  data->setHtml(asHtml(copied));
  QGuiApplication::clipboard()->setMimeData(data);
  return static_cast<int>(copied.cells.size());
}

void previewPrint(Desk& desk, QWidget* parent) {
  if (desk.sheet() == nullptr || !loadFaces().ok()) return;
  const std::vector<Page> pages = desk.sheet()->pages();
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(ownWords(desk.job().title));
  takePaperOf(pages.front(), printer);
  if (PrintPreview(printer, pages, parent).exec() == QDialog::Accepted) {
    desk.notePrinted(sheetDate());
  }
}

}  // namespace inchwright::app
