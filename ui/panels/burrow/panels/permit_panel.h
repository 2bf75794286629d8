#pragma once
/// The permit to bore: all that a supervisor is asked for before the first blow, line by line, and the entries for what
/// stands on no other page.

#include <QDate>
#include <functional>

#include "burrow/day/permit_lines.h"
#include "burrow/panels/form_panel.h"

class QCheckBox;

namespace burrow {

class PermitPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit PermitPanel(Document& document, QWidget* parent = nullptr);
  /// Whose day it is; for tests.
  void set_clock(std::function<QDate()> today) { today_ = std::move(today); }
  [[nodiscard]] QString visible_text() const;
  [[nodiscard]] QCheckBox* daily(DailyItem item) const { return daily_[static_cast<std::size_t>(item)]; }
  [[nodiscard]] QPushButton* button(const QString& begins_with) const;

 Q_SIGNALS:
  /// The permit is wanted on paper: to be printed, or as a PDF.
  void paper_wanted(bool printed);

 protected:
  void refresh() override;

 private:
  void make_numbers();
  void make_owners();
  void make_exposures();
  void make_today();
  void make_signatures();
  void tick(DailyItem item, bool done);
  void sign(GoSigned Permit::*who, int row);
  void show_lines();
  void show_owners();
  void show_holes();
  [[nodiscard]] Date today() const;
  [[nodiscard]] QString lines_html(const std::vector<PermitLine>& lines) const;

  std::function<QDate()> today_;
  std::string owner_, hole_;
  QLabel *state_, *lines_;
  TextForm *numbers_ = nullptr, *contact_ = nullptr, *photo_ = nullptr, *pits_ = nullptr, *daily_by_ = nullptr,
           *signed_ = nullptr;
  CardList *owners_ = nullptr, *holes_ = nullptr;
  QLabel *no_owners_ = nullptr, *no_holes_ = nullptr;
  std::vector<QCheckBox*> daily_;
};

}  // namespace burrow
