/// Muting from the panel of the findings: button, key, context menu; each one step of undo.

#include <QCoreApplication>
#include <QKeyEvent>
#include <QMenu>
#include <QPushButton>

#include "burrow/document/text.h"
#include "burrow/panels/findings_panel.h"
#include "finding_details.h"
#include "findings_list.h"

namespace burrow {

bool may_be_accepted(const Crossing& crossing, const Finding& finding) {
  Finding apart_from_its_severity = finding;  // any stop may hurt; here it is asked what it is about
  if (finding.severity == Severity::stop) apart_from_its_severity.severity = Severity::caution;
  return !can_hurt_people(apart_from_its_severity) || !counts_in_verdict(finding) || mute_of(crossing, finding);
}

bool FindingsPanel::may_accept(int row) const {
  return row >= 0 && row < model_->rowCount() && may_be_accepted(document_.crossing(), model_->finding(row));
}

void FindingsPanel::open_form() {
  const int row = picked_row();
  if (row < 0) return;
  if (!may_be_accepted(document_.crossing(), model_->finding(row))) {
    Q_EMIT refused(tr("What may hurt people is not accepted: it is mended, or seen first."));
    return;
  }
  unfold(true);
  muting_ = model_->finding(row);
  details_->form()->open_for(*muting_, text_from(finding_text(*muting_, units_)),
                             mute_of(document_.crossing(), *muting_));
}

void FindingsPanel::take_mute(const QString& reason, const QString& by) {
  if (!muting_) return;
  // As it measures now: the crossing may have been changed while the form stood open.
  model_->refresh();
  const int row = model_->row_like(*muting_, picked_row());
  if (row < 0) {
    details_->form()->close_form();
    muting_.reset();
    Q_EMIT refused(tr("Nothing to accept: the finding has gone meanwhile."));
    refresh();
    return;
  }
  const Finding finding = model_->finding(row);
  // The day that the program judges by: after midnight the clock may be ahead of it.
  std::string day = today_().toString(Qt::ISODate).toStdString();
  if (const std::optional<Date>& on = document_.tables().judged_on; on && text_of(*on) < day) day = text_of(*on);
  Result<std::vector<Mute>> muted =
      with_mute(document_.crossing(), finding, {reason.toStdString(), by.toStdString(), day});
  if (!muted) {
    details_->form()->complain(muted.error());
    return;
  }
  set_muted(std::move(*muted), finding, tr("Accept a finding"));
}

void FindingsPanel::take_unmute() {
  const int row = picked_row();
  if (row < 0) return;
  const Finding finding = model_->finding(row);
  set_muted(without_mute(document_.crossing(), finding), finding, tr("No longer accept a finding"));
}

void FindingsPanel::set_muted(std::vector<Mute> muted, const Finding& finding, const QString& step) {
  if (!document_.change(step, [&](Crossing& c) { c.muted = std::move(muted); })) {
    Q_EMIT refused(document_.in_session() ? tr("Not while something is dragged.")
                                          : tr("Nothing may be changed: %1").arg(document_.read_only_because()));
    return;
  }
  details_->form()->close_form();
  muting_.reset();
  refresh();
  const int row = model_->row_like(finding, picked_row());
  if (row >= 0 && filter_->shown(row).isValid()) {
    quiet_ = true;
    list_->setCurrentIndex(filter_->shown(row));
    list_->scrollTo(filter_->shown(row));
    quiet_ = false;
  }
  show_working();
  (list_->isVisible() ? static_cast<QWidget*>(list_) : this)->setFocus();
}

void FindingsPanel::open_menu(const QPoint& at) {
  const QModelIndex index = list_->indexAt(at);
  if (!index.isValid()) return;
  list_->setCurrentIndex(index);
  QMenu menu(this);
  const int row = filter_->whole_row(index);
  menu.addAction(tr("&Go there"), this, [this, row] { Q_EMIT jump_wanted(row); });
  menu.addSeparator();
  if (may_be_accepted(document_.crossing(), model_->finding(row)))
    menu.addAction(mute()->text(), mute(), &QPushButton::click);
  if (mute_of(document_.crossing(), model_->finding(row)))
    menu.addAction(tr("&No longer accept"), unmute(), &QPushButton::click);
  menu.addSeparator();
  menu.addAction(tr("&Copy"), copy(), &QPushButton::click);
  menu.exec(list_->viewport()->mapToGlobal(at));
}

bool FindingsPanel::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_->viewport() && event->type() == QEvent::MouseButtonPress) open_at_press_ = list_->open_row();
  // Over what an open row shows, the wheel scrolls the list.
  if (watched == area_ && event->type() == QEvent::Wheel) {
    QCoreApplication::sendEvent(list_->viewport(), event);
    return true;
  }
  if (watched == list_ && event->type() == QEvent::KeyPress) {
    const auto* key = static_cast<const QKeyEvent*>(event);
    const bool plain = key->modifiers() == Qt::NoModifier && picked_row() >= 0;
    if (plain && (key->key() == Qt::Key_Right || key->key() == Qt::Key_Left)) {
      unfold(key->key() == Qt::Key_Right);
      return true;
    }
    if (plain && key->key() == Qt::Key_M) {
      open_form();
      return true;
    }
    if (plain && key->key() == Qt::Key_U) {
      if (mute_of(document_.crossing(), model_->finding(picked_row()))) take_unmute();
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace burrow
