#pragma once
/// The checks of the pipe, one below another: name, value, limit, and how much of it is used, as a number and as a bar.

#include <QListWidget>
#include <string>
#include <vector>

#include "burrow/drawing/theme.h"

namespace burrow {

struct CheckRow {
  std::string code;
  QString name;
  QString numbers;  ///< "34.7 kN, 14.6 kN at most"; what is not known where it could not be done
  QString used;     ///< "98 %", empty where nothing is judged
  double share = 0;
  Severity severity = Severity::note;  ///< of its finding
  bool broken = false, near = false;
};

class CheckList : public QListWidget {
  Q_OBJECT

 public:
  explicit CheckList(const QString& accessible_name, QWidget* parent);
  void set_theme(const Theme& theme);
  void show_checks(std::vector<CheckRow> rows, const std::string& picked);
  [[nodiscard]] const std::vector<CheckRow>& rows() const { return rows_; }
  [[nodiscard]] const Theme& theme() const { return theme_; }

 Q_SIGNALS:
  /// A person picked a check.
  void chosen(const QString& code);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fit_height();

  std::vector<CheckRow> rows_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
