/// What is done so that no work is lost in silence: copies of it, what earlier runs left, the file on the disk.

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QSessionManager>
#include <QStatusBar>
#include <QTimer>
#include <cstdio>

#include "burrow/document/end_signals.h"
#include "burrow/document/file_watch.h"
#include "burrow/document/recovery.h"
#include "burrow/widgets/typing.h"
#include "burrow/window/left_work_dialog.h"
#include "burrow/window/main_window.h"
#include "burrow/window/notice_line.h"

namespace burrow {

void MainWindow::keep_copies() {
  recovery_ = std::make_unique<Recovery>(document_, recovery_folder_, 2000, this);
  auto* keeping = new QLabel(this);
  keeping->hide();
  statusBar()->addPermanentWidget(keeping);
  connect(recovery_.get(), &Recovery::trouble, keeping, [keeping](const QString& why) {
    keeping->setText(tr("Unsaved work cannot be kept: %1").arg(why));
    keeping->setVisible(!why.isEmpty());
  });
}

void MainWindow::keep_through_ends() {
  on_end_signal(this, [this](int signal) {
    take_typing_in(*this);
    if (recovery_ && !recovery_->keep_for_later()) {
      const QString elsewhere = recovery_->keep_elsewhere(QDir::tempPath());
      const QString said =
          elsewhere.isEmpty() ? tr("Unsaved work could not be kept.") : tr("Unsaved work is kept in %1").arg(elsewhere);
      std::fprintf(stderr, "%s\n", qUtf8Printable(said));
    }
    QCoreApplication::exit(128 + signal);
  });
  // A logout asks each program; the session may go on all the same.
  connect(
      qApp, &QGuiApplication::commitDataRequest, this,
      [this](QSessionManager& session) {
        take_typing_in(*this);
        if (recovery_ && !recovery_->keep_at_once()) session.cancel();  // the disk takes nothing: the person is asked
      },
      Qt::DirectConnection);
}

void MainWindow::watch_file() {
  // Who had it open may have left it since, and then this one holds it.
  constexpr int now_and_then_ms = 60'000;
  auto* again = new QTimer(this);
  connect(again, &QTimer::timeout, this, [this] {
    if (!document_.path().isEmpty()) mark_open();
  });
  again->start(now_and_then_ms);
  auto* watch = new FileWatch(document_, 200, this);
  connect(notice_, &NoticeLine::action_wanted, this, [this, watch] {
    if (watch->state() == OnDisk::gone && document_.on_disk() == OnDisk::gone) {
      write_to(document_.path());
    } else if (document_.modified()) {
      ask_about_theirs();
    } else {
      open_file(document_.path());
    }
  });
  const auto tell = [this, watch] {
    if (watch->state() == OnDisk::as_known) return notice_->hide();
    if (watch->state() == OnDisk::gone)
      return notice_->say(tr("“%1” is no longer there: somebody moved or removed it. Your work is on the screen only.")
                              .arg(document_.path()),
                          tr("Write it again"));
    const QString when = QLocale().toString(QFileInfo(document_.path()).lastModified(), QLocale::ShortFormat);
    notice_->say(tr("“%1” was changed by somebody else at %2.").arg(document_.title(), when),
                 document_.modified() ? tr("Compare…") : tr("Take theirs"));
  };
  connect(watch, &FileWatch::noticed, this, tell);
  // With unsaved work there is something to choose between.
  connect(&document_, &Document::file_state_changed, this, tell);
}

void MainWindow::offer_left_work() {
  if (!recovery_) return;
  std::vector<LeftWork> left = Recovery::left_work(recovery_folder_);
  if (left.empty()) return;
  LeftWorkDialog dialog(document_.tables(), std::move(left), units_, dark_, this);
  dialog.exec();
  if (!dialog.taken()) return;
  const Result<void> back = Recovery::take_back(document_, *dialog.taken());
  if (!back) return complain(tr("The unsaved work could not be read; it stays where it is."), back.error());
  if (recovery_->keep_now()) Recovery::discard(*dialog.taken());  // only when the new copy is on the disk
  mark_open();
}

}  // namespace burrow
