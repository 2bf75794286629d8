#pragma once
/// Beside the drawing: the findings worst first, a choice among them, muting, and the working of the picked one.

#include <QDate>
#include <QWidget>
#include <functional>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/panels/findings_filter.h"
#include "burrow/panels/findings_model.h"
#include "burrow/panels/mute_form.h"

class QListView;
class QLabel;
class QPushButton;
class QTextBrowser;
class QTimer;

namespace burrow {

class FindingsPanel : public QWidget {
  Q_OBJECT

 public:
  FindingsPanel(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  /// Picks a finding by its number in the whole list; a filter that hides it is lifted.
  void pick(int row);
  /// What is picked on the drawing, for the filter.
  void set_picked_things(const std::vector<ItemRef>& parts);
  /// The day on which something is muted; tests set their own.
  void set_today(std::function<QDate()> today) { today_ = std::move(today); }
  /// The finding picked in the list, by its number in the whole list; −1: none.
  [[nodiscard]] int picked_row() const;
  [[nodiscard]] QListView* list() const { return list_; }
  /// Text of the working shown, for copying.
  [[nodiscard]] QString working() const;
  [[nodiscard]] QPushButton* copy() const { return copy_; }
  [[nodiscard]] QPushButton* mute() const { return mute_; }
  [[nodiscard]] QPushButton* unmute() const { return unmute_; }
  [[nodiscard]] MuteForm* mute_form() const { return form_; }
  [[nodiscard]] FilterBar* filter_bar() const { return bar_; }
  /// Stands in place of the list where it would be empty.
  [[nodiscard]] QLabel* empty_note() const { return empty_; }

  bool eventFilter(QObject* watched, QEvent* event) override;

 Q_SIGNALS:
  void picked(int row);
  /// Enter or a double-click: go there, and on with the keyboard on the drawing.
  void jump_wanted(int row);
  /// Why nothing was changed.
  void refused(const QString& why);

 private:
  void refresh();
  void show_working(int row);
  void show_list_or_note();
  void open_form();
  void take_mute(const QString& reason, const QString& by);
  void take_unmute();
  void set_muted(std::vector<Mute> muted, const Finding& finding, const QString& step);
  void open_menu(const QPoint& at);

  Document& document_;
  FindingsModel* model_;
  FindingsFilter* filter_;
  FindingDelegate* delegate_;
  QLabel* heading_;
  FilterBar* bar_;
  QListView* list_;
  QLabel* empty_;
  QLabel* working_heading_;
  QTextBrowser* working_;
  QPushButton* mute_;
  QPushButton* unmute_;
  QPushButton* copy_;
  MuteForm* form_;
  std::optional<Finding> muting_;  ///< the finding the form is open for
  bool quiet_ = false;             ///< the list is put right, nobody picks
  std::function<QDate()> today_ = [] { return QDate::currentDate(); };
  QString plain_;  ///< finding and working as text
  QTimer* later_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace burrow
