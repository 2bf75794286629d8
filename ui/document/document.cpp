#include "burrow/document/document.h"

#include <QCryptographicHash>
#include <QFileInfo>

#include "burrow/check/with_findings.h"
#include "burrow/crossing/blank.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"

namespace burrow {

namespace {

QByteArray hash_of(const std::string& text) {
  return QCryptographicHash::hash(QByteArrayView(text), QCryptographicHash::Sha256);
}

}  // namespace

/// Swaps one part with its other value; undo and redo are the same.
class SwapEdit : public QUndoCommand {
 public:
  SwapEdit(Document& document, ItemRef part, ItemValue other, bool already_done)
      : document_(document), part_(std::move(part)), other_(std::move(other)), already_done_(already_done) {}

  void redo() override {
    if (already_done_) {
      already_done_ = false;
      return;
    }
    swap();
  }
  void undo() override { swap(); }

 private:
  void swap() {
    ItemValue current = value_of(document_.crossing_, part_);
    document_.set_part(part_, std::move(other_));
    other_ = std::move(current);
  }

  Document& document_;
  ItemRef part_;
  ItemValue other_;
  bool already_done_;
};

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
    stale_ = false;
  }
  return assessment_;
}

void Document::note_trials(Crossing counted, std::vector<Finding> found) {
  if (found.empty() && from_trials_.empty()) return;
  counted_ = std::move(counted);
  from_trials_ = std::move(found);
  stale_ = true;
  Q_EMIT changed();
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
  stale_ = true;
  Q_EMIT changed();
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
  Q_EMIT replaced();
  Q_EMIT changed();
  Q_EMIT file_state_changed();
}

void Document::start_from(Crossing crossing, bool unsaved) {
  adopt(std::move(crossing), {}, {}, unsaved);
}

void Document::remember_path(const QString& path, const QDateTime& kept) {
  path_ = path;
  known_ = QByteArray("not what was kept");
  if (const Result<std::string> text = read_text_file(path.toStdString());
      text && QFileInfo(path).lastModified() <= kept)
    known_ = hash_of(*text);
  Q_EMIT file_state_changed();
}

OnDisk Document::on_disk() const {
  if (path_.isEmpty()) return OnDisk::as_known;
  if (!QFileInfo::exists(path_)) return OnDisk::gone;
  const Result<std::string> text = read_text_file(path_.toStdString());
  return text && hash_of(*text) == known_ ? OnDisk::as_known : OnDisk::changed;
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
  Result<std::string> text = read_text_file(file);
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

void Document::set_part(const ItemRef& part, ItemValue value) {
  set_value(crossing_, part, std::move(value));
  stale_ = true;
  Q_EMIT changed();
}

void Document::note_name(const QString& name) {
  if (!name.trimmed().isEmpty()) last_name_ = name.trimmed();
}

bool Document::change(const ItemRef& part, ItemValue value, const QString& step_name) {
  if (crossing_.version > known_file_version || in_session_) return false;
  if (value_of(crossing_, part) == value) return true;
  auto* edit = new SwapEdit(*this, part, std::move(value), false);
  edit->setText(step_name);
  undo_.push(edit);
  return true;
}

EditSession::EditSession(Document& document, ItemRef part)
    : document_(document),
      part_(std::move(part)),
      before_(value_of(document.crossing(), part_)),
      crossing_before_(document.crossing()),
      assessment_before_(document.assessment()) {
  document_.in_session_ = true;
  document_.session_ = this;
}

EditSession::~EditSession() {
  abandon();
}

void EditSession::abandon() {
  if (!open_) return;
  open_ = false;
  document_.in_session_ = false;
  document_.session_ = nullptr;
  document_.set_part(part_, before_);
}

void EditSession::preview(ItemValue value) {
  if (open_) document_.set_part(part_, std::move(value));
}

void EditSession::finish(const QString& step_name) {
  if (!open_) return;
  open_ = false;
  document_.in_session_ = false;
  document_.session_ = nullptr;
  if (value_of(document_.crossing(), part_) == before_) return;
  auto* edit = new SwapEdit(document_, part_, before_, true);
  edit->setText(step_name);
  document_.undo_.push(edit);
}

}  // namespace burrow
