#pragma once
/// What the panels with entries have in common: a column that scrolls, with headings, texts, lists and entries.

#include <utility>
#include <vector>

#include "burrow/panels/live_panel.h"

class QComboBox;
class QLabel;
class QVBoxLayout;

namespace burrow {

class EntryForm;

class FormPanel : public LivePanel {
  Q_OBJECT

 public:
  FormPanel(Document& document, int refresh_ms, QWidget* parent);
  void set_units(UnitSystem units) override;
  void set_theme(const Theme& theme) override;
  void refresh_now() override;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

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

 private:
  void colour_labels();
  void show_lock();

  QWidget* page_;
  QVBoxLayout* column_;
  QLabel* lock_;
  std::vector<QLabel*> soft_;
  std::vector<EntryForm*> forms_;
  std::vector<QWidget*> tab_order_;
};

}  // namespace burrow
