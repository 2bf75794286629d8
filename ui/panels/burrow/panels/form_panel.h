#pragma once
/// What the panels beside the drawing have in common: a column that scrolls, refreshed only while it is seen and no
/// more often than its work allows.

#include <QWidget>
#include <utility>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"

class QComboBox;
class QLabel;
class QTimer;
class QVBoxLayout;

namespace burrow {

class EntryForm;

class FormPanel : public QWidget {
  Q_OBJECT

 public:
  /// `refresh_ms`: least time between two refreshes while things are dragged.
  FormPanel(Document& document, int refresh_ms, QWidget* parent);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  /// Brings everything up to date now, seen or not: for pictures and tests.
  void refresh_now();

 protected:
  void showEvent(QShowEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

  /// Shows the crossing as it stands.
  virtual void refresh() = 0;

  using Facts = std::vector<std::pair<QString, QString>>;
  QLabel* add_heading(const QString& text);
  QLabel* add_text(const QString& accessible_name, bool soft = false);
  QComboBox* add_combo(const QString& accessible_name);
  EntryForm* add_entries(const QString& standing_word);
  void add_gap();
  void add_end();
  /// A label above with its entry or list.
  void add_labelled(const QString& label, QWidget* field);
  void add_widget(QWidget* widget);
  /// Names left, values right, as rich text.
  [[nodiscard]] QString facts_html(const Facts& facts) const;
  /// One undo step; says so where nothing may be changed.
  void change(const PartRef& part, PartValue value, const QString& step_name);
  [[nodiscard]] bool locked() const;

  /// A number with its unit, kept on one line.
  [[nodiscard]] QString text_of(double value, Dimension dimension) const;
  /// What a label says, without its marks.
  [[nodiscard]] static QString plain(const QLabel* label);
  /// Tab goes down the column; after entries were made anew.
  void order_tabs();

  Document& document_;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();

 private:
  void wait();
  void colour();
  void show_lock();

  QWidget* page_;
  QVBoxLayout* column_;
  QLabel* lock_;
  QTimer* later_;
  bool stale_ = true;
  std::vector<QLabel*> soft_;
  std::vector<EntryForm*> forms_;
  std::vector<QWidget*> tab_order_;
};

}  // namespace burrow
