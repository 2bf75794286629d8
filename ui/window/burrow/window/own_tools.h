#pragma once
/// The crew's own tools and compressors: a list on this machine, from which one is picked for a job.

#include <QDialog>
#include <QString>
#include <optional>

#include "burrow/document/document.h"

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace burrow {

/// Each kept as a crossing file of its own name in a folder of the person's. An empty folder keeps nothing.
/// Evidence: OwnTools.*
class OwnTools {
 public:
  OwnTools(QString folder, const Tables& tables) : folder_(std::move(folder)), tables_(tables) {}
  /// In the order of their names.
  [[nodiscard]] QStringList names() const;
  /// Empty: there is none of that name, or it cannot be read (a damaged file is left where it is).
  [[nodiscard]] std::optional<Crossing> of(const QString& name) const;
  /// Errors: no name that a file may have; the folder cannot be written.
  [[nodiscard]] Result<void> keep(const QString& name, const Crossing& crossing) const;
  [[nodiscard]] Result<void> forget(const QString& name) const;

 private:
  [[nodiscard]] QString path(const QString& name) const;
  QString folder_;
  const Tables& tables_;
};

class OwnToolsDialog : public QDialog {
  Q_OBJECT

 public:
  OwnToolsDialog(Document& document, OwnTools own, QWidget* parent);
  [[nodiscard]] QListWidget* list() const { return list_; }
  [[nodiscard]] QLineEdit* name() const { return name_; }
  [[nodiscard]] QString message() const;
  /// Puts the picked one into the open crossing, as one undo step; not while a bore is under way.
  void use();
  void keep();
  void forget();

 private:
  void fill();
  void say_so(const QString& text);

  Document& document_;
  OwnTools own_;
  QString asked_;  ///< the name that is kept already and was asked for once
  QListWidget* list_;
  QLineEdit* name_;
  QLabel* message_;
  QPushButton *use_, *keep_, *forget_;
};

}  // namespace burrow
