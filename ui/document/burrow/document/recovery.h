#pragma once
/// Keeps a copy of unsaved work, so that a crash loses nothing.

#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>
#include <memory>
#include <vector>

#include "burrow/document/document.h"

namespace burrow {

/// Work left behind by a run that ended without saving.
struct LeftWork {
  QString copy;      ///< path of the kept copy
  QString original;  ///< path of the file it belongs to, empty if it never had one
  QByteArray known;  ///< hash of what that held as far as the run knew; empty: that was not kept
  QDateTime when;
};

class Recovery : public QObject {
  Q_OBJECT

 public:
  /// Keeps its copies in `folder` (made if missing). `after_ms`: pause after a change before the copy is written.
  Recovery(Document& document, const QString& folder, int after_ms = 2000, QObject* parent = nullptr);
  /// A normal end: the copy is removed.
  ~Recovery() override;

  /// Copies that no running program holds, newest first. One that holds what its file holds (a kill between saving and
  /// removing the copy) is no work: it is removed.   Evidence: LeftWorkTest.SavedAlready_*, KilledWindow.*
  [[nodiscard]] static std::vector<LeftWork> left_work(const QString& folder);
  /// Opens a copy as unsaved work in place of the document's crossing. The copy stays until another one is kept:
  /// `discard` it then.
  static Result<void> take_back(Document& document, const LeftWork& work);
  static void discard(const LeftWork& work);

  /// Writes the copy at once, whatever is under way, and leaves it behind: the system ends the program. False: nothing
  /// could be kept.   Evidence: Recovery.Signal_*
  bool keep_for_later();
  /// Where the folder of the copies takes nothing: a file of its own in another one. Its path; empty: nor there.
  /// Evidence: Recovery.Signal_FullDisk_*
  QString keep_elsewhere(const QString& folder);
  /// The same where the program may go on: a logout that is asked about may still be called off.
  bool keep_at_once();
  /// Removes what earlier runs left beside their copies: locks that nobody holds, halves of copies.
  /// Evidence: Recovery.Leftovers_*
  static void clean(const QString& folder);

  /// Writes the copy now, if there is unsaved work; otherwise removes it.
  /// False: nothing could be kept now.
  bool keep_now();
  [[nodiscard]] QString copy_path() const { return copy_; }
  /// The pause after a change, for a test that cannot wait.
  void set_pause(int after_ms);

 Q_SIGNALS:
  /// Nothing can be kept, and why; it is tried again. Empty: it can again.
  void trouble(const QString& why);

 private:
  bool write_copy();
  void remove_copy() const;
  void hold();
  void tell(const QString& why);

  Document& document_;
  QString copy_;
  QString told_;
  bool left_ = false;
  std::unique_ptr<QLockFile> lock_;
  QTimer later_;
  QTimer again_;
};

}  // namespace burrow
