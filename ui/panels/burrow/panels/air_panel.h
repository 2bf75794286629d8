#pragma once
/// Compressor, air line, oil: what is entered, the pressure along the line, what follows, what to change.

#include <functional>

#include "burrow/document/air_fields.h"
#include "burrow/panels/form_panel.h"

namespace burrow {

class AirView;
struct AirBar;
struct Card;

class AirPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit AirPanel(Document& document, QWidget* parent = nullptr);
  /// Picks a part of the line, −1 for none.
  void pick(int part);
  [[nodiscard]] int picked() const { return picked_; }

  [[nodiscard]] AirView* view() const { return view_; }
  [[nodiscard]] EntryForm* compressor() const { return compressor_; }
  [[nodiscard]] EntryForm* site() const { return site_; }
  [[nodiscard]] EntryForm* part() const { return part_; }
  [[nodiscard]] EntryForm* oil() const { return oil_; }
  [[nodiscard]] EntryForm* marks() const { return marks_; }
  [[nodiscard]] TextForm* name() const { return name_; }
  [[nodiscard]] CardList* list() const { return list_; }
  /// Add hose, add coupling, add lubricator, up, down, remove.
  [[nodiscard]] QPushButton* button(std::size_t which) const { return buttons_[which]; }
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  void make_line();
  void edit(const QString& step_name, const std::function<void(Air&)>& change_it);
  void add(AirPartKind kind);
  void move(int by);
  void remove();
  void point_part();
  void show_line();
  void show_bars();
  [[nodiscard]] QString part_words(const AirPart& part) const;
  [[nodiscard]] Card card(std::size_t part) const;
  [[nodiscard]] std::vector<AirBar> bars() const;
  [[nodiscard]] QString pressure_words() const;
  [[nodiscard]] QString change_words() const;
  [[nodiscard]] QString oil_words() const;
  [[nodiscard]] QString not_judged_words() const;

  int picked_ = -1;
  QLabel *pressure_ = nullptr, *part_heading_ = nullptr, *oil_text_ = nullptr, *changes_ = nullptr;
  AirView* view_ = nullptr;
  EntryForm *compressor_ = nullptr, *site_ = nullptr, *part_ = nullptr, *oil_ = nullptr, *marks_ = nullptr;
  TextForm* name_ = nullptr;
  CardList* list_ = nullptr;
  std::vector<QPushButton*> buttons_;
};

}  // namespace burrow
