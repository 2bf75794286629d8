/// The site log after the bore: what became of a hole that was given up, the pull-in, what is closed up, photos.

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QImageReader>
#include <QLabel>
#include <QPushButton>

#include "ask_box.h"
#include "burrow/crossing/day_record.h"
#include "burrow/crossing/find.h"
#include "burrow/document/record_fields.h"
#include "burrow/document/text.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/day_panel.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/words/after_text.h"
#include "choice_words.h"
#include "day_lines.h"
#include "reading_entry.h"
#include "statement_fields.h"

namespace burrow {

namespace {

constexpr std::size_t photos_seen = 3;
constexpr int preview_px = 320;

}  // namespace

void DayPanel::make_after() {
  int before = widgets_so_far();
  aftermath_ = add_text(tr("What came after"));
  add_choice(
      tr("The hole"), {tr("not entered"), tr("grouted"), tr("dug out"), tr("open"), tr("tool inside")},
      [this] {
        const DayRecord* now = record();
        return now && now->aftermath.hole ? static_cast<int>(*now->aftermath.hole) + 1 : 0;
      },
      [this](int row) {
        change(tr("What became of the hole"), [this, row](Crossing& c) {
          std::optional<HoleState>& hole = find_by_id(c.record, shown_)->aftermath.hole;
          hole = row > 0 ? std::optional(word_at<HoleState>(row - 1)) : std::nullopt;
        });
      });
  release_ = add_buttons({tr("The place is released…")})[0];
  connect(release_, &QPushButton::clicked, this, &DayPanel::release_place);
  aftermath_widgets_ = widgets_after(before);

  before = widgets_so_far();
  add_gap();
  add_heading(tr("After the bore"));
  left_to_do_ = add_text(tr("What is left to do"));
  const auto of_record = [this](auto member) {
    return [this, member](auto& c) {
      auto* found = find_by_id(c.record, shown_);
      return found ? member(*found) : nullptr;
    };
  };
  const auto part = [this] { return ItemRef{ItemKind::sheet, shown_, -1}; };
  pull_texts_ = add_texts(part);
  pull_texts_->add(text_field(document_, tr("pulled in"), of_record([](auto& r) { return &r.aftermath.pull_in.what; })),
                   tr("As: 14 m PE 63 x 5.8"), true);
  pull_texts_->add(
      day_field(document_, tr("pulled in on"), of_record([](auto& r) { return &r.aftermath.pull_in.date; })),
      tr("As 2026-03-14"));
  pull_texts_->add(text_field(document_, tr("pulled in by"), of_record([](auto& r) { return &r.aftermath.pull_in.by; }),
                              TextKind::name));
  pull_texts_->add(text_field(document_, tr("watched for strikes by"),
                              of_record([](auto& r) { return &r.aftermath.pull_in.watched_by; }), TextKind::name));
  pull_ = add_entries(tr("default"), true);
  grout_ = add_texts(part);
  add_statement(*grout_, document_,
                {tr("closed around the pipe"), tr("As: grouted from the launch pit"), tr("closed by"), tr("closed on")},
                of_record([](auto& r) { return &r.aftermath.grouted; }));
  photos_ = add_list(tr("Photos"), photos_seen);
  const auto buttons = add_buttons({tr("Add a photo…"), tr("Remove this photo")});
  connect(buttons[0], &QPushButton::clicked, this, [this] {
    const QString path = QFileDialog::getOpenFileName(this, tr("Add a photo"), {}, tr("Pictures (*.jpg *.jpeg *.png)"));
    if (!path.isEmpty()) take_photo(path);
  });
  connect(buttons[1], &QPushButton::clicked, this, [this] {
    if (!record() || locked() || photo_ >= record()->aftermath.photos.size()) return;
    change(tr("Remove a photo"), [this](Crossing& c) {
      std::vector<RecordPhoto>& all = find_by_id(c.record, shown_)->aftermath.photos;
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(photo_));
    });
  });
  connect(photos_, &CardList::chosen, this, [this](const QString& id) { photo_ = id.toULongLong(); });
  after_widgets_ = widgets_after(before);
}

/// The path stands in the record; a small preview is kept beside the crossing, so that the record can be looked at
/// where the picture is not.
void DayPanel::take_photo(const QString& path) {
  if (!record() || locked()) return;
  const QString crossing = document_.path();
  const QDir folder = crossing.isEmpty() ? QDir() : QFileInfo(crossing).dir();
  const QString relative = crossing.isEmpty() ? path : folder.relativeFilePath(path);
  if (!crossing.isEmpty()) {
    QImageReader reader(path);
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (size.isValid()) reader.setScaledSize(size.scaled(preview_px, preview_px, Qt::KeepAspectRatio));
    const QImage small = reader.read();
    const QString previews = QFileInfo(crossing).completeBaseName() + QStringLiteral("-photos");
    if (small.isNull() || !folder.mkpath(previews) ||
        !small.save(folder.filePath(previews + QLatin1Char('/') + QFileInfo(path).completeBaseName() +
                                    QStringLiteral("-small.jpg"))))
      entry_->complain(tr("No preview of %1 could be kept beside the crossing; its path is kept.").arg(path));
  }
  ask_->ask(tr("Photo: %1").arg(relative), tr("What it shows"), {}, tr("Enter the photo"),
            [this, relative](const QString& what, const QString&) { add_photo(relative, what); });
  bring_into_view(ask_);
}

void DayPanel::add_photo(const QString& path, const QString& what) {
  change(tr("Add a photo"), [&](Crossing& c) {
    if (DayRecord* now = find_by_id(c.record, shown_))
      now->aftermath.photos.push_back({path.toStdString(), what.toStdString(), {}});
  });
}

void DayPanel::release_place() {
  ask_->ask(tr("Who let the work go on after this bore?"), tr("Who released it, by name"),
            tr("How it was seen to be safe"), tr("Enter the release"), [this](const QString& by, const QString& how) {
              const std::string day = clock_().date().toString(Qt::ISODate).toStdString();
              change(tr("Release the place"), [&](Crossing& c) {
                find_by_id(c.record, shown_)->aftermath.released = {how.toStdString(), by.toStdString(), day, {}};
              });
            });
  bring_into_view(ask_);
}

void DayPanel::show_after() {
  const DayRecord* now = record();
  const bool any = now && !now->readings.empty();
  const QString after = any ? aftermath_text(*now) : QString();
  for (QWidget* widget : aftermath_widgets_) widget->setVisible(!after.isEmpty());
  aftermath_->setText(after);
  const bool over = any && ended(*now);
  for (QWidget* widget : after_widgets_) widget->setVisible(over);
  if (!over) return;
  QString html;
  for (const AfterLine& line : after_lines(document_.crossing(), *now, units_))
    html += QStringLiteral("<p style='margin:0'>%1 %2: <b>%3</b></p>")
                .arg(line.done ? QStringLiteral("✓") : QStringLiteral("?"), text_from(line.what).toHtmlEscaped(),
                     text_from(line.found).toHtmlEscaped());
  left_to_do_->setText(html);
  pull_->show_part({ItemKind::sheet, shown_, -1}, [this] { return pull_in_fields(document_.crossing(), shown_); });
  pull_->catch_up();
  for (TextForm* form : {pull_texts_, grout_}) form->catch_up();
  std::vector<Card> cards;
  for (std::size_t i = 0; i < now->aftermath.photos.size(); ++i) {
    Card card;
    card.id = std::to_string(i);
    card.title = text_from(now->aftermath.photos[i].what);
    card.facts = text_from(now->aftermath.photos[i].path);
    cards.push_back(std::move(card));
  }
  photo_ = std::min(photo_, cards.empty() ? 0 : cards.size() - 1);
  photos_->setVisible(!cards.empty());
  photos_->show_cards(std::move(cards), std::to_string(photo_));
}

}  // namespace burrow
