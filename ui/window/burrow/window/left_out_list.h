#pragma once
/// What an import asks, leaves out and notes, where and why; questions first.

#include <QTreeWidget>
#include <optional>

#include "burrow/import/into_crossing.h"

namespace burrow {

class LeftOutList : public QTreeWidget {
  Q_OBJECT

 public:
  explicit LeftOutList(QWidget* parent);
  /// Of the file that is shown and of what came of all files; either may be missing. Gives one line that counts them.
  QString show_all(const ImportFile* file, const std::optional<Imported>& imported);

 private:
  void add(const QString& place, const QString& text, const QString& reason, bool is_question);
};

}  // namespace burrow
