#pragma once
/// The open crossing with its assessment, its undo stack and its file. The one place through which the screen changes
/// a crossing.

#include <QByteArray>
#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/check/assess.h"
#include "burrow/document/item.h"
#include "burrow/document/lens.h"
#include "burrow/document/undo_step.h"
#include "burrow/file/disk.h"

namespace burrow {

class EditSession;

/// What became of the document's file since it was read or written here.
enum class OnDisk { as_known, changed, gone };

/// Equal, whatever is muted: what was computed of one holds for the other.
bool same_but_mutes(const Crossing& one, const Crossing& other);

class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(Tables tables, QObject* parent = nullptr);

  [[nodiscard]] const Crossing& crossing() const { return crossing_; }
  [[nodiscard]] const Tables& tables() const { return tables_; }
  /// Judges for that day from now on: a window left open over midnight.   Evidence: Document.NextDay_*
  void judge_on(const Date& day);
  /// What random trials of that crossing found worse counts while it stands as they knew it (its mutes apart).
  /// Evidence: Document.Trials_*, TrialsJob.Verdict_*
  void note_trials(Crossing counted, std::vector<Finding> found);
  /// Brings the assessment up to date first, if the crossing has changed.
  const Assessment& assessment();
  QUndoStack& undo_stack() { return undo_; }

  /// Path of the file, empty for a crossing that was never saved.
  [[nodiscard]] QString path() const { return path_; }
  /// File name for the title bar, or the crossing's name.
  [[nodiscard]] QString title() const;
  /// Also where the file is gone, or was written and not confirmed: then the screen alone holds the work for sure.
  [[nodiscard]] bool modified() const { return !undo_.isClean() || unsaved_start_ || gone_ || unconfirmed_; }
  /// Why nothing may be changed ("the file is of a newer version"), empty if it may.
  [[nodiscard]] QString read_only_because() const { return read_only_because_; }

  Result<void> open(const QString& path);
  /// Saves to `path`, which becomes the document's file. Unconfirmed: it is written there, but stays unsaved work.
  Result<Written> save_as(const QString& path);
  /// Starts from a crossing that has no file yet; `unsaved` asks before it is thrown away.
  void start_from(Crossing crossing, bool unsaved);
  /// Recovered work goes back to the file it came from when it is saved; `known`: the hash of what that file held when
  /// the work was kept. A file that holds something else, or of which that is not known, counts as changed by somebody.
  void remember_path(const QString& path, const QByteArray& known);
  [[nodiscard]] const QByteArray& known_hash() const { return known_; }
  /// Of what a file holds now; empty: it cannot be read.
  [[nodiscard]] static QByteArray hash_on_disk(const QString& path);
  /// Told by the content, not by times.   Evidence: OnDisk.*
  [[nodiscard]] OnDisk on_disk() const;
  /// Somebody looked: a file that is gone makes unsaved work of what is on the screen.   Evidence: FileWatchTest.Gone_*
  void note_on_disk(OnDisk state);

  /// Changes the crossing as one undo step, named for the Edit menu ("Move gas main"). Nothing happens where the edit
  /// leaves it as it was.
  /// False: nothing may be changed now (newer file, a drag under way, the layout while a bore is under way with it).
  /// Evidence: Document.Change_*, LayoutsPanel.UnderWay_*
  bool change(const QString& step_name, const Edit& edit);

  /// The name that a person typed last while the program runs, to be offered where a name is asked; empty: none yet.
  [[nodiscard]] const QString& last_name() const { return last_name_; }
  void note_name(const QString& name);

  /// Locks what a drag holds: moves show at once, nothing is on the undo stack until `EditSession::finish`.
  [[nodiscard]] bool in_session() const { return in_session_; }

 Q_SIGNALS:
  /// The crossing changed, by an edit, a drag, undo or opening; the assessment is made when asked for.
  void changed();
  /// Another crossing was opened or started: fit the drawing, forget the picked thing.
  void replaced();
  void file_state_changed();

 private:
  friend class EditSession;
  friend class UndoStep;
  void report_change();
  void note_located_anew(Crossing& other) const;
  void adopt(Crossing crossing, const QString& path, const QString& read_only_because, bool unsaved);

  Tables tables_;
  Crossing crossing_;
  LongLists lists_;  ///< of the crossing, as its undo steps hold them
  Assessment assessment_;
  Crossing counted_;                  ///< the crossing of the last random trials
  std::vector<Finding> from_trials_;  ///< what they found worse
  bool stale_ = true;
  bool in_session_ = false;
  EditSession* session_ = nullptr;  ///< the open one, closed before another crossing is taken
  bool unsaved_start_ = false;
  bool gone_ = false;         ///< the file was there and is not now
  bool unconfirmed_ = false;  ///< the disk did not confirm the last save
  QUndoStack undo_;
  QString path_;
  QByteArray known_;  ///< hash of what the file held
  QString read_only_because_;
  QString last_name_;
};

/// A drag or a held arrow key: press opens it, moves preview, `finish` pushes exactly one undo step; destruction
/// without `finish` puts everything back.   Evidence: EditSession.*
class EditSession {
 public:
  /// `part`: what is held.
  EditSession(Document& document, ItemRef part);
  ~EditSession();
  EditSession(const EditSession&) = delete;
  EditSession& operator=(const EditSession&) = delete;

  [[nodiscard]] const ItemRef& part() const { return part_; }
  /// The crossing and its assessment as they stood at the start, for the ghost.
  [[nodiscard]] const Crossing& crossing_before() const { return crossing_before_; }
  [[nodiscard]] const Assessment& assessment_before() const { return assessment_before_; }

  /// Shows the edit of the crossing as it stood at the start: of several previews only the last counts.
  void preview(const Edit& edit);
  void finish(const QString& step_name);
  /// Puts everything back; later calls do nothing.
  void abandon();

 private:
  bool close();
  bool note_moved_lines();

  Document& document_;
  ItemRef part_;
  Crossing crossing_before_;
  Crossing rest_before_;  ///< without its long lists, which a preview does not copy
  Assessment assessment_before_;
  bool open_ = true;
};

}  // namespace burrow
