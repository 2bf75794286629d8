/// The start page in the window: what its cards do, and when it goes.

#include <QLabel>
#include <QSettings>
#include <QStackedWidget>
#include <QStatusBar>

#include "burrow/window/main_window.h"
#include "burrow/window/start_page.h"

namespace burrow {

void MainWindow::make_start_page() {
  start_ = new StartPage(document_.tables(), units_, this);
  start_->set_theme(theme_now());
  pages_->addWidget(start_);
  connect(start_, &StartPage::new_wanted, this, &MainWindow::new_guided_crossing);
  connect(start_, &StartPage::blank_wanted, this, &MainWindow::new_crossing);
  connect(start_, &StartPage::open_wanted, this, &MainWindow::ask_and_open);
  connect(start_, &StartPage::import_wanted, this, &MainWindow::ask_and_import);
  connect(start_, &StartPage::file_wanted, this, [this](const QString& path) {
    if (may_leave()) open_file(path);
  });
  connect(start_, &StartPage::sample_wanted, this, [this](const QString& name) {
    if (!may_leave()) return;
    open_sample(name);
    if (name.startsWith(QLatin1String("lesson"))) side_->show_page(SideColumn::Page::practice);
    show_first_hints();
  });
}

void MainWindow::show_start() {
  if (start_ && start_->units() != units_) {
    pages_->removeWidget(start_);
    start_->deleteLater();
    start_ = nullptr;
  }
  if (!start_) make_start_page();
  start_->show_recent(QSettings().value(QStringLiteral("recent")).toStringList());
  pages_->setCurrentWidget(start_);
  statusBar()->hide();
  name_->hide();
  start_->cards().front()->setFocus();
}

bool MainWindow::starting() const {
  return start_ && pages_->currentWidget() == start_;
}

void MainWindow::hide_start() {
  if (!starting()) return;
  pages_->setCurrentIndex(0);
  statusBar()->show();
  name_->show();
  drawing_->setFocus();
}

}  // namespace burrow
