#pragma once
/// A list of things of the crossing, two lines each: badge and name, and below what matters about it. Nothing is cut
/// off: both lines wrap.

#include <QColor>
#include <QListWidget>
#include <string>
#include <vector>

#include "burrow/drawing/theme.h"

namespace burrow {

struct Card {
  std::string id;
  QString title;
  QString facts;
  QString badge;        ///< letter code, empty for none
  QColor badge_colour;  ///< of its frame
  QString tag;          ///< "expose", empty for none
};

class CardList : public QListWidget {
  Q_OBJECT

 public:
  /// `most_rows`: seen at once; more are scrolled to.
  CardList(const QString& accessible_name, std::size_t most_rows, QWidget* parent);
  void set_theme(const Theme& theme);
  /// Shows these in order with one of them picked; says nothing about it.
  void show_cards(std::vector<Card> cards, const std::string& picked);
  [[nodiscard]] const std::vector<Card>& cards() const { return cards_; }
  /// Rows at least this high, for a hand with a glove.
  void set_least_row(int px) { least_row_ = px; }
  [[nodiscard]] int least_row() const { return least_row_; }
  [[nodiscard]] const Theme& theme() const { return theme_; }

 Q_SIGNALS:
  /// A person picked a row.
  void chosen(const QString& id);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fit_height();

  std::size_t most_rows_;
  int least_row_ = 0;
  std::vector<Card> cards_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
