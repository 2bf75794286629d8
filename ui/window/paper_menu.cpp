/// Paper and files for others: the entries of the File menu and what they do.

#include <QMenu>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QStatusBar>

#include "burrow/export/csv.h"
#include "burrow/export/dxf.h"
#include "burrow/export/geojson.h"
#include "burrow/file/disk.h"
#include "burrow/import/longitude_latitude.h"
#include "burrow/panels/day_panel.h"
#include "burrow/panels/permit_panel.h"
#include "burrow/sheet/image.h"
#include "burrow/sheet/page_out.h"
#include "burrow/sheet/sheet.h"
#include "burrow/window/main_window.h"
#include "burrow/window/side_column.h"

namespace burrow {

void MainWindow::add_paper_entries(QMenu* menu) {
  struct Part {
    SheetPart part;
    QString name;
  };
  const Part parts[] = {{SheetPart::sheet, tr("&Crossing sheet…")},     {SheetPart::card, tr("&Setup card…")},
                        {SheetPart::permit, tr("&Permit to bore…")},    {SheetPart::working, tr("Ca&lculation…")},
                        {SheetPart::as_built, tr("As-&built record…")}, {SheetPart::all, tr("&All of it…")}};
  QMenu* print = menu->addMenu(tr("&Print"));
  QMenu* pdf = menu->addMenu(tr("Sheet as P&DF"));
  for (const auto& [part, name] : parts) {
    QAction* action = print->addAction(name, this, [this, wanted = part] { print_part(wanted); });
    if (part == SheetPart::sheet) {
      action->setShortcut(QKeySequence::Print);
      actions_.sheet = with_icon(action, "sheet");
    }
    pdf->addAction(name, this, [this, wanted = part] { write_pdf(wanted); });
  }
  connect(&side_->day(), &DayPanel::as_built_wanted, this, [this](const std::string& record, bool printed) {
    printed ? print_part(SheetPart::as_built, record) : write_pdf(SheetPart::as_built, record);
  });
  connect(&side_->permit(), &PermitPanel::paper_wanted, this,
          [this](bool printed) { printed ? print_part(SheetPart::permit) : write_pdf(SheetPart::permit); });
  menu->addAction(tr("Card as PNG, for a p&hone…"), this, [this] {
    write_file(tr("PNG (*.png)"), QStringLiteral("png"), [this](const QString& path) -> Result<void> {
      const Result<Sheet> sheet = sheet_of(document_.crossing(), document_.assessment(), document_.tables(), units_);
      return sheet ? write_card_png(*sheet, path) : tl::unexpected(sheet.error());
    });
  });
  menu->addAction(tr("Pict&ure as PNG…"), this, &MainWindow::write_png);
  add_export_entries(menu->addMenu(tr("&Export")));
}

void MainWindow::print_part(SheetPart part, const std::string& record) {
  if (!take_typing_for_paper()) return;
  Result<Sheet> sheet = sheet_of(document_.crossing(), document_.assessment(), document_.tables(), units_);
  if (!sheet) return complain(tr("Nothing was printed."), sheet.error());
  sheet->record = record;
  const Result<std::vector<Page>> pages = sheet_pages(*sheet, part);
  if (!pages) return complain(tr("Nothing was printed."), pages.error());
  QPrinter printer(QPrinter::HighResolution);
  printer.setFullPage(true);
  printer.setPageSize(QPageSize(pages->front().size_mm, QPageSize::Millimeter));
  QPrintPreviewDialog preview(&printer, this);
  preview.setWindowTitle(tr("Print at actual size"));
  Result<void> done;
  connect(&preview, &QPrintPreviewDialog::paintRequested, this, [&](QPrinter* to) { done = print_pages(*to, *pages); });
  preview.exec();
  if (!done) complain(tr("It was not printed, or not all of it."), done.error());
}

void MainWindow::write_pdf(SheetPart part, const std::string& record) {
  if (!take_typing_for_paper()) return;
  const QString path = ask_where(tr("Sheet as PDF"), QString(), tr("PDF (*.pdf)"), QStringLiteral("pdf"));
  if (path.isEmpty()) return;
  Result<Sheet> sheet = sheet_of(document_.crossing(), document_.assessment(), document_.tables(), units_);
  if (sheet) sheet->record = record;
  const Result<void> written = sheet ? write_sheet_pdf(*sheet, path, part) : tl::unexpected(sheet.error());
  if (!written)
    complain(tr("The sheet was not written."), written.error());
  else
    statusBar()->showMessage(tr("Written: %1").arg(path), 6000);
}

void MainWindow::write_png() {
  if (!take_typing_for_paper()) return;
  const QString path = ask_where(tr("Picture as PNG"), QString(), tr("PNG (*.png)"), QStringLiteral("png"));
  if (path.isEmpty()) return;
  ImageOptions options;
  options.dark = dark_;
  options.units = units_;
  const Result<void> written =
      write_image(document_.crossing(), document_.assessment(), document_.tables(), options, path);
  if (!written)
    complain(tr("The picture was not written."), written.error());
  else
    statusBar()->showMessage(tr("Written: %1").arg(path), 6000);
}

void MainWindow::write_file(const QString& kinds, const QString& ending,
                            const std::function<Result<void>(const QString& path)>& write) {
  if (!take_typing_for_paper()) return;
  const QString path = ask_where(tr("Export"), QString(), kinds, ending);
  if (path.isEmpty()) return;
  const Result<void> written = write(path);
  if (!written)
    complain(tr("The file was not written."), written.error());
  else
    statusBar()->showMessage(tr("Written: %1").arg(path), 6000);
}

void MainWindow::add_export_entries(QMenu* menu) {
  const auto save = [](const QString& path, const Result<std::string>& text) -> Result<void> {
    return text ? save_atomically(path.toStdString(), *text) : tl::unexpected(text.error());
  };
  menu->addAction(tr("&Drawing as DXF, in metres…"), this, [this, save] {
    write_file(tr("Drawing (*.dxf)"), QStringLiteral("dxf"), [&](const QString& path) {
      return save(path, write_dxf(document_.crossing(), document_.tables(), document_.assessment(), units_));
    });
  });
  menu->addAction(tr("Drawing to scale as &SVG…"), this, [this] {
    write_file(tr("Picture (*.svg)"), QStringLiteral("svg"), [&](const QString& path) -> Result<void> {
      const Result<Sheet> sheet = sheet_of(document_.crossing(), document_.assessment(), document_.tables(), units_);
      return sheet ? write_sheet_svg(*sheet, path) : tl::unexpected(sheet.error());
    });
  });
  menu->addAction(tr("&Map as GeoJSON…"), this, [this, save] {
    write_file(tr("Map (*.geojson)"), QStringLiteral("geojson"), [&](const QString& path) {
      const Crossing& crossing = document_.crossing();
      return save(path, write_geojson(crossing, document_.assessment(), [&](std::vector<PlanPoint> local) {
                    return longitude_latitude(*crossing.site.georeference, std::move(local));
                  }));
    });
  });
  const std::pair<CsvTable, QString> tables[] = {{CsvTable::path, tr("Table of the &path as CSV…")},
                                                 {CsvTable::marks, tr("Table of the &hose marks as CSV…")},
                                                 {CsvTable::findings, tr("Table of the &findings as CSV…")}};
  for (const auto& [table, name] : tables)
    menu->addAction(name, this, [this, save, which = table] {
      write_file(tr("Table (*.csv)"), QStringLiteral("csv"), [&](const QString& path) {
        return save(path, write_csv(which, document_.crossing(), document_.assessment(), units_));
      });
    });
}

}  // namespace burrow
