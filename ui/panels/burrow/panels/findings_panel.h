#pragma once
/// Beside the drawing: the findings worst first, a choice among them; the selected one unfolds its calculation, what
/// mends it, and the reason with which it may stand.

#include <QDate>
#include <QPersistentModelIndex>
#include <QWidget>
#include <functional>
#include <memory>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/panels/findings_filter.h"
#include "burrow/panels/findings_model.h"
#include "burrow/panels/mute_form.h"

class QListView;
class QLabel;
class QPushButton;
class QTimer;

namespace burrow {

class FindingDetails;
class FindingsList;
struct GhostLayout;

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
  /// Whether it can be accepted with a reason.
  [[nodiscard]] bool may_accept(int row) const;
  /// Opens the form for the reason of the selected finding.
  void accept_selected() { open_form(); }
  /// Only those about what is selected on the drawing.
  void show_about_selected();
  /// The day on which something is muted; tests set their own.
  void set_today(std::function<QDate()> today) { today_ = std::move(today); }
  /// The finding picked in the list, by its number in the whole list; −1: none.
  [[nodiscard]] int picked_row() const;
  [[nodiscard]] QListView* list() const;
  /// Words of the selected finding and its calculation, as a person reads them.
  [[nodiscard]] QString working() const;
  [[nodiscard]] QPushButton* copy() const;
  [[nodiscard]] QPushButton* mute() const;
  [[nodiscard]] QPushButton* unmute() const;
  [[nodiscard]] MuteForm* mute_form() const;
  /// What stands below the words of the open row.
  [[nodiscard]] FindingDetails* details() const { return details_; }
  [[nodiscard]] FilterBar* filter_bar() const { return bar_; }
  /// Stands in place of the list where it would be empty.
  [[nodiscard]] QLabel* empty_note() const { return empty_; }

  bool eventFilter(QObject* watched, QEvent* event) override;

 Q_SIGNALS:
  void picked(int row);
  /// Enter or a double-click: go there, and on with the keyboard on the drawing.
  void jump_wanted(int row);
  /// What a button would do to the layout, for the drawing; null: nothing.
  void preview_changed(const std::shared_ptr<const burrow::GhostLayout>& layout);
  /// The page of the utilities says where to dig to see this one.
  void hole_wanted(const QString& utility);
  /// Why nothing was changed.
  void refused(const QString& why);

 private:
  void refresh();
  void wire();
  void show_working();
  void unfold(bool on);
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
  FilterBar* bar_;
  QWidget* area_;  ///< the list, and over it what its open row shows
  FindingsList* list_;
  QLabel* empty_;
  FindingDetails* details_;
  bool unfolded_ = true;
  QPersistentModelIndex open_at_press_;
  std::optional<Finding> muting_;  ///< the finding the form is open for
  bool quiet_ = false;             ///< the list is put right, nobody picks
  std::function<QDate()> today_ = [] { return QDate::currentDate(); };
  QTimer* later_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace burrow
