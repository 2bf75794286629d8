#pragma once
/// What the panels with entries have in common: a column that scrolls, with headings, texts, lists and entries.

#include <QStringList>
#include <functional>
#include <utility>
#include <vector>

#include "burrow/panels/live_panel.h"

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace burrow {

class EntryForm;
class TextForm;
class CardList;

class FormPanel : public LivePanel {
  Q_OBJECT

 public:
  FormPanel(Document& document, int refresh_ms, QWidget* parent);
  void set_units(UnitSystem units) override;
  void set_theme(const Theme& theme) override;
  void refresh_now() override;

 protected:
  using Facts = std::vector<std::pair<QString, QString>>;
  QLabel* add_heading(const QString& text);
  QLabel* add_text(const QString& accessible_name, bool soft = false);
  QComboBox* add_combo(const QString& accessible_name);
  /// `beside_choices`: in line with choices and texts, which have more room than their labels.
  EntryForm* add_entries(const QString& standing_word, bool beside_choices = false);
  TextForm* add_texts(std::function<ItemRef()> part);
  CardList* add_list(const QString& accessible_name, std::size_t most_rows);
  /// A label with its choice beside it, below it for long words: `shown` gives the row that stands, −1 for none;
  /// `chosen` takes a person's.
  QComboBox* add_choice(const QString& label, const QStringList& words, std::function<int()> shown,
                        std::function<void(int)> chosen, bool long_words = false);
  /// Buttons side by side, below one another where there is no room.
  std::vector<QPushButton*> add_buttons(const QStringList& words);
  void add_gap();
  void add_end();
  /// How many things stand in the column, and those that came since then: to be hidden together.
  [[nodiscard]] int widgets_so_far() const;
  [[nodiscard]] std::vector<QWidget*> widgets_after(int then) const;
  void bring_into_view(QWidget* widget);
  /// The same with its first line at the top: of what is taller than the room there is.
  void bring_to_top(QWidget* widget);
  /// A label above with its entry or list; the label.
  QLabel* add_labelled(const QString& label, QWidget* field);
  void add_widget(QWidget* widget);
  /// Above the column, where it neither moves nor scrolls.
  void add_above(QWidget* widget);
  /// Names left, values right, as rich text.
  [[nodiscard]] QString facts_html(const Facts& facts) const;
  /// One undo step; says so where nothing may be changed.
  void change(const QString& step_name, const Edit& edit);
  [[nodiscard]] bool locked() const;

  /// A number with its unit, kept on one line.
  [[nodiscard]] QString text_of(double value, Dimension dimension) const;
  /// What a label says, without its marks.
  [[nodiscard]] static QString plain(const QLabel* label);
  /// Tab goes down the column; after entries were made anew.
  void order_tabs();

 private:
  struct Choice {
    QComboBox* combo;
    std::function<int()> shown;
  };
  void colour_labels();
  void show_lock();
  void show_choices();

  QScrollArea* scroll_;
  QWidget* page_;
  QVBoxLayout* column_;
  QLabel* lock_;
  std::vector<QLabel*> soft_;
  std::vector<EntryForm*> forms_;
  std::vector<TextForm*> texts_;
  std::vector<CardList*> lists_;
  std::vector<Choice> choices_;
  std::vector<QWidget*> tab_order_;
};

}  // namespace burrow
