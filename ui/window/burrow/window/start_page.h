#pragma once
/// What a person sees who has not opened anything: new, open, import; what was open last; the samples as pictures and
/// the lessons. Everything on it is reached by Tab and opened by Enter.

#include <QAbstractButton>
#include <QWidget>
#include <memory>
#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/drawing/theme.h"
#include "burrow/tables/tables.h"

class QLabel;
class QVBoxLayout;

namespace burrow {

/// A crossing and its answer, as a card shows them.
struct CardPicture {
  Crossing crossing;
  Assessment assessment;
};

/// A big button of one of three kinds: a way to begin, a crossing with its picture, a lesson.
class StartCard : public QAbstractButton {
  Q_OBJECT

 public:
  enum class Kind { way, picture, lesson };
  StartCard(Kind kind, const Tables& tables, const QString& title, const QString& below, QWidget* parent);
  void set_icon(const QString& name) { icon_ = name; }
  void set_keys(const QString& keys) { keys_ = keys; }
  void set_main(bool on) { main_ = on; }
  void set_picture(std::shared_ptr<const CardPicture> picture) { picture_ = std::move(picture); }
  /// The same with its numbers, before what stands below the title already.
  void show_facts(std::shared_ptr<const CardPicture> picture, const QString& facts);
  [[nodiscard]] bool has_picture() const { return picture_ != nullptr; }
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void paint_way(QPainter& painter) const;
  void paint_picture(QPainter& painter) const;
  void paint_crossing(QPainter& painter, const QRectF& area, double coarser) const;
  void paint_lesson(QPainter& painter) const;
  void paint_words(QPainter& painter, const QRectF& room, const QColor& ink, const QColor& soft) const;

  Kind kind_;
  const Tables& tables_;
  QString below_, icon_, keys_;
  bool main_ = false;
  std::shared_ptr<const CardPicture> picture_;
  Theme theme_ = Theme::light();
};

class StartPage : public QWidget {
  Q_OBJECT

 public:
  /// Its cards keep the units it is made with.
  StartPage(const Tables& tables, UnitSystem units, QWidget* parent);
  [[nodiscard]] UnitSystem units() const { return units_; }
  void set_theme(const Theme& theme);
  /// Files that were open last, newest first; those that are gone say so.
  void show_recent(const QStringList& paths);
  [[nodiscard]] const std::vector<StartCard*>& cards() const { return cards_; }
  [[nodiscard]] const std::vector<StartCard*>& recent_cards() const { return recent_cards_; }

 Q_SIGNALS:
  void new_wanted();
  void blank_wanted();
  void open_wanted();
  void import_wanted();
  void file_wanted(const QString& path);
  void sample_wanted(const QString& name);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  QWidget* make_ways();
  QWidget* make_samples();
  StartCard* add_card(StartCard::Kind kind, const QString& title, const QString& below, QWidget* parent);
  void place_samples();
  void look_at_next();

  const Tables& tables_;
  UnitSystem units_;
  QWidget* ways_;
  QWidget* samples_;
  QVBoxLayout* recent_ = nullptr;
  QLabel* none_recent_ = nullptr;
  QLabel* samples_head_ = nullptr;
  QLabel* lessons_head_ = nullptr;
  QStringList recent_paths_;
  std::size_t looked_at_ = 0;  ///< of the recent files, for their pictures
  std::vector<StartCard*> cards_, sample_cards_, lesson_cards_, recent_cards_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
