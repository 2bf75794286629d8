#include "burrow/document/document.h"

#include <QCryptographicHash>
#include <QDate>
#include <QFileInfo>
#include <utility>

#include "burrow/check/with_findings.h"
#include "burrow/crossing/blank.h"
#include "burrow/crossing/day_record.h"
#include "burrow/crossing/find.h"
#include "burrow/day/with_day.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"

namespace burrow {

namespace {

QByteArray hash_of(const std::string& text) {
  return QCryptographicHash::hash(QByteArrayView(text), QCryptographicHash::Sha256);
}

}  // namespace

Document::Document(Tables tables, QObject* parent)
    : QObject(parent), tables_(std::move(tables)), crossing_(blank_crossing()) {
  undo_.setUndoLimit(500);
  connect(&undo_, &QUndoStack::cleanChanged, this, &Document::file_state_changed);
}

const Assessment& Document::assessment() {
  if (stale_) {
    assessment_ = assess(crossing_, tables_, assessment_.ground_surface);
    if (!from_trials_.empty() && same_but_mutes(counted_, crossing_))
      assessment_ = with_findings(crossing_, tables_, std::move(assessment_), from_trials_);
    assessment_ = with_open_record(crossing_, tables_, std::move(assessment_));
    stale_ = false;
  }
  return assessment_;
}

void Document::note_trials(Crossing counted, std::vector<Finding> found) {
  if (found.empty() && from_trials_.empty()) return;
  counted_ = std::move(counted);
  from_trials_ = std::move(found);
  report_change();
}

bool same_but_mutes(const Crossing& one, const Crossing& other) {
  if (one.muted == other.muted) return one == other;
  Crossing muted = one;
  muted.muted = other.muted;
  return muted == other;
}

void Document::judge_on(const Date& day) {
  if (tables_.judged_on == day) return;
  tables_.judged_on = day;
  report_change();
}

QString Document::title() const {
  if (!path_.isEmpty()) return QFileInfo(path_).fileName();
  if (!crossing_.name.empty()) return text_from(crossing_.name);
  return tr("New crossing");
}

void Document::adopt(Crossing crossing, const QString& path, const QString& read_only_because, bool unsaved) {
  if (session_) session_->abandon();
  crossing_ = std::move(crossing);
  stale_ = true;
  path_ = path;
  read_only_because_ = read_only_because;
  unsaved_start_ = unsaved;
  gone_ = false;
  unconfirmed_ = false;
  from_trials_.clear();
  undo_.clear();
  lists_ = {};
  Q_EMIT replaced();
  Q_EMIT changed();
  Q_EMIT file_state_changed();
}

void Document::start_from(Crossing crossing, bool unsaved) {
  adopt(std::move(crossing), {}, {}, unsaved);
}

void Document::remember_path(const QString& path, const QByteArray& known) {
  path_ = path;
  known_ = known;
  Q_EMIT file_state_changed();
}

QByteArray Document::hash_on_disk(const QString& path) {
  const Result<std::string> text = read_regular_file(path.toStdString());
  return text ? hash_of(*text) : QByteArray();
}

OnDisk Document::on_disk() const {
  if (path_.isEmpty()) return OnDisk::as_known;
  if (!QFileInfo::exists(path_)) return OnDisk::gone;
  const QByteArray there = hash_on_disk(path_);
  return !there.isEmpty() && there == known_ ? OnDisk::as_known : OnDisk::changed;
}

void Document::note_on_disk(OnDisk state) {
  const bool gone = state == OnDisk::gone;
  if (gone == gone_) return;
  gone_ = gone;
  Q_EMIT file_state_changed();
}

Result<void> Document::open(const QString& path) {
  const std::string file = path.toStdString();
  mend_killed_save(file);
  Result<std::string> text = read_regular_file(file);
  if (!text) return tl::unexpected(std::move(text).error());
  Result<Crossing> crossing = read_crossing(*text, tables_);
  if (!crossing) return tl::unexpected(std::move(crossing).error());
  QString why;
  if (crossing->version > known_file_version)
    why =
        tr("it was written by a newer version (%1) and would lose what this one does not know").arg(crossing->version);
  else if (!QFileInfo(path).isWritable())
    why = tr("the file may not be written; use Save As to keep changes");
  known_ = hash_of(*text);  // before anybody is told and looks
  adopt(std::move(*crossing), QFileInfo(path).absoluteFilePath(), why, false);
  clean_leftovers(QFileInfo(path_).absolutePath().toStdString());
  return {};
}

Result<Written> Document::save_as(const QString& path) {
  if (crossing_.version > known_file_version)
    return fail(path.toStdString(), "a crossing of a newer version", "a program of that version to save it");
  if (in_session_) return fail(path.toStdString(), "a drag that is not finished", "the mouse button released first");
  const std::string text = write_crossing(crossing_);
  // What could not be opened again is not written over what could.
  if (const Result<Crossing> again = read_crossing(text, tables_); !again) return tl::unexpected(again.error());
  const Result<Written> written = replace_file(path.toStdString(), text);
  if (!written) return written;
  path_ = QFileInfo(path).absoluteFilePath();
  known_ = hash_of(text);
  read_only_because_.clear();
  unsaved_start_ = false;
  gone_ = false;
  unconfirmed_ = *written == Written::unconfirmed;
  undo_.setClean();
  Q_EMIT file_state_changed();
  return written;
}

void Document::report_change() {
  stale_ = true;
  Q_EMIT changed();
}

void Document::note_name(const QString& name) {
  if (!name.trimmed().isEmpty()) last_name_ = name.trimmed();
}

/// Whoever types how, when or how well a line was located says where it lies, wherever it was dragged before.
void Document::note_located_anew(Crossing& other) const {
  for (Utility& utility : other.site.utilities) {
    if (!utility.located.moved) continue;
    const Utility* before = find_by_id(crossing_.site.utilities, utility.id);
    if (before && before->located.moved == utility.located.moved && !(before->located == utility.located))
      utility.located.moved.reset();
  }
}

bool Document::change(const QString& step_name, const Edit& edit) {
  if (crossing_.version > known_file_version || in_session_) return false;
  Crossing other = crossing_;
  edit(other);
  note_located_anew(other);
  if (other == crossing_) return true;
  if (changes_layout_under_way(crossing_, other)) return false;
  lists_ = long_lists(crossing_, lists_);
  LongLists others = long_lists(other, lists_);
  undo_.push(new UndoStep(*this, step_name, without_long_lists(std::move(other)), std::move(others), false));
  return true;
}

EditSession::EditSession(Document& document, ItemRef part)
    : document_(document),
      part_(std::move(part)),
      crossing_before_(document.crossing()),
      rest_before_(without_long_lists(document.crossing())),
      assessment_before_(document.assessment()) {
  document_.in_session_ = true;
  document_.session_ = this;
}

EditSession::~EditSession() {
  abandon();
}

/// False: it was closed before.
bool EditSession::close() {
  if (!std::exchange(open_, false)) return false;
  document_.in_session_ = false;
  document_.session_ = nullptr;
  return true;
}

void EditSession::abandon() {
  if (!close()) return;
  put_back(document_.crossing_, rest_before_, crossing_before_);
  document_.report_change();
}

void EditSession::preview(const Edit& edit) {
  if (!open_) return;
  put_back(document_.crossing_, rest_before_, crossing_before_);
  edit(document_.crossing_);
  document_.report_change();
}

/// What somebody located does not lie elsewhere because it was dragged: that is kept with it, and asked about.
bool EditSession::note_moved_lines() {
  const std::optional<Date>& on = document_.tables_.judged_on;
  const std::string today = on ? text_of(*on) : QDate::currentDate().toString(Qt::ISODate).toStdString();
  bool any = false;
  for (Utility& utility : document_.crossing_.site.utilities) {
    const Utility* before = find_by_id(crossing_before_.site.utilities, utility.id);
    if (!before || before->path == utility.path || *utility.status == UtilityStatus::proposed ||
        *utility.located.how == LocatedHow::unknown)
      continue;
    utility.located.moved = today;
    any = true;
  }
  return any;
}

void EditSession::finish(const QString& step_name) {
  if (!close() || document_.crossing() == crossing_before_) return;
  if (note_moved_lines()) document_.report_change();
  LongLists before = long_lists(crossing_before_, document_.lists_);
  document_.lists_ = long_lists(document_.crossing(), before);
  document_.undo_.push(new UndoStep(document_, step_name, std::move(rest_before_), std::move(before), true));
}

}  // namespace burrow
