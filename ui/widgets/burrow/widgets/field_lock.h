#pragma once
/// A small lock at the end of an entry: what is typed there is then neither dragged nor searched. Clicked, or Ctrl+L in
/// the entry; one step of undo.

#include <QObject>
#include <string>

#include "burrow/document/document.h"

class QAction;
class QLineEdit;

namespace burrow {

class FieldLock : public QObject {
  Q_OBJECT

 public:
  FieldLock(Document& document, QLineEdit* entry);
  /// Where it locks, as a JSON pointer; empty: nowhere, and no lock is shown. `name`: what is typed there.
  void show_place(const std::string& place, const QString& name);
  [[nodiscard]] bool locked() const;
  void toggle();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();

  Document& document_;
  QLineEdit* entry_;
  QAction* action_ = nullptr;
  std::string place_;
  QString name_;
};

}  // namespace burrow
