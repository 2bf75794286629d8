#include "burrow/panels/permit_panel.h"

#include <QCheckBox>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QStyle>
#include <QStyleOptionButton>
#include <algorithm>

#include "burrow/crossing/display_name.h"
#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {

const ItemRef permit_part{ItemKind::sheet, "permit", -1};
constexpr std::size_t most_rows = 4;
constexpr int glove = 48;

/// A box to tick with a glove: its words wrap, and all of it takes the tap.
class GloveTick : public QCheckBox {
 public:
  using QCheckBox::QCheckBox;
  [[nodiscard]] QSize minimumSizeHint() const override { return {indent() + 40, minimumHeight()}; }

 protected:
  bool hitButton(const QPoint& at) const override { return rect().contains(at); }
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    const QRect words = rect().adjusted(indent(), 0, 0, 0);
    QStyleOptionButton box = option;
    box.rect = QRect(4, (height() - indicator()) / 2, indicator(), indicator());
    style()->drawPrimitive(QStyle::PE_IndicatorCheckBox, &box, &painter, this);
    painter.setPen(palette().color(isEnabled() ? QPalette::Normal : QPalette::Disabled, QPalette::WindowText));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, text());
    if (!hasFocus()) return;
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
  }
  void resizeEvent(QResizeEvent* event) override {
    QCheckBox::resizeEvent(event);
    const QRect words = fontMetrics().boundingRect(QRect(0, 0, std::max(40, width() - indent()), 10000),
                                                   Qt::AlignLeft | Qt::TextWordWrap, text());
    setFixedHeight(std::max(glove, words.height() + 8));
  }

 private:
  [[nodiscard]] int indicator() const { return style()->pixelMetric(QStyle::PM_IndicatorWidth, nullptr, this); }
  [[nodiscard]] int indent() const { return indicator() + 14; }
};

/// The contact of an owner, made where nothing was entered of him yet.
OwnerContact& contact_in(Crossing& crossing, const std::string& owner) {
  std::vector<OwnerContact>& all = crossing.permit.owners;
  const auto it =
      std::find_if(all.begin(), all.end(), [&](const OwnerContact& contact) { return contact.owner == owner; });
  if (it != all.end()) return *it;
  all.emplace_back().owner = owner;
  return all.back();
}

}  // namespace

PermitPanel::PermitPanel(Document& document, QWidget* parent)
    : FormPanel(document, heavy_page_ms, parent), today_([] { return QDate::currentDate(); }) {
  add_heading(tr("Permit to bore"));
  state_ = add_text(tr("State of the permit"));
  const auto paper = add_buttons({tr("As PDF…"), tr("Print…")});
  for (QPushButton* button : paper) button->setToolTip(tr("Every line with what was entered, and lines to sign on"));
  connect(paper[0], &QPushButton::clicked, this, [this] { Q_EMIT paper_wanted(false); });
  connect(paper[1], &QPushButton::clicked, this, [this] { Q_EMIT paper_wanted(true); });
  lines_ = add_text(tr("Lines of the permit"));
  make_numbers();
  make_owners();
  make_exposures();
  make_today();
  make_signatures();
  add_end();
  connect(&document, &Document::replaced, this, [this] {
    owner_.clear();
    hole_.clear();
  });
}

void PermitPanel::make_numbers() {
  add_gap();
  add_heading(tr("Numbers, and who stands where"));
  numbers_ = add_texts([] { return permit_part; });
  numbers_->add(text_field(document_, tr("emergency number"), [](auto& c) { return &c.permit.emergency_phone; }),
                tr("Printed on the card"));
  numbers_->add(text_field(document_, tr("locating service"), [](auto& c) { return &c.permit.locating_phone; }));
  numbers_->add(text_field(
                    document_, tr("at the air valve"), [](auto& c) { return &c.permit.at_air_valve; }, TextKind::name),
                tr("By name, with a radio"));
  numbers_->add(text_field(
                    document_, tr("watcher at the exit"), [](auto& c) { return &c.permit.at_exit; }, TextKind::name),
                tr("At the surface, off the line"));
}

void PermitPanel::make_owners() {
  add_gap();
  add_heading(tr("Owners of lines"));
  no_owners_ = add_text(tr("Owners"), true);
  no_owners_->setText(tr("No utility has an owner yet: enter them on the page Utilities."));
  owners_ = add_list(tr("Owners of lines"), most_rows);
  connect(owners_, &CardList::chosen, this, [this](const QString& id) {
    owner_ = id.toStdString();
    show_owners();
    order_tabs();
  });
  contact_ = add_texts([this] { return ItemRef{ItemKind::sheet, owner_, -1}; });
  const auto field = [this](const QString& label, auto of, TextKind kind = TextKind::words) {
    return TextField{label,
                     [this, of] {
                       OwnerContact contact = contact_of(document_.crossing().permit, owner_);
                       return text_from(of(contact));
                     },
                     [this, of](Crossing& c, const QString& typed) {
                       if (!owner_.empty()) of(contact_in(c, owner_)) = typed.trimmed().toStdString();
                     },
                     kind};
  };
  contact_->add(field(tr("number"), [](OwnerContact& c) -> std::string& { return c.phone; }));
  contact_->add(field(tr("answered"), [](OwnerContact& c) -> std::string& { return c.answered.how; }),
                tr("As: marked, no lines here, will attend"), true);
  contact_->add(field(
      tr("who answered"), [](OwnerContact& c) -> std::string& { return c.answered.by; }, TextKind::name));
  contact_->add(
      {tr("answered on"),
       [this] { return text_from(contact_of(document_.crossing().permit, owner_).answered.date.value_or("")); },
       [this](Crossing& c, const QString& typed) {
         if (owner_.empty()) return;
         std::optional<std::string>& date = contact_in(c, owner_).answered.date;
         date.reset();
         if (!typed.trimmed().isEmpty()) date = typed.trimmed().toStdString();
       },
       TextKind::day},
      tr("As 2026-03-14"));
  contact_->add(field(tr("where it is shut off"), [](OwnerContact& c) -> std::string& { return c.valve; }),
                tr("As: valve box, corner by the lamp"), true);
}

void PermitPanel::make_exposures() {
  add_gap();
  add_heading(tr("Exposures"));
  no_holes_ = add_text(tr("Exposures"), true);
  no_holes_->setText(tr("No test hole was entered: do it on the page Utilities, with its level, by whom and when."));
  holes_ = add_list(tr("Test holes"), most_rows);
  connect(holes_, &CardList::chosen, this, [this](const QString& id) {
    hole_ = id.toStdString();
    show_holes();
    order_tabs();
  });
  photo_ = add_texts([this] { return ItemRef{ItemKind::test_holes, hole_, -1}; });
  photo_->add(text_field(document_, tr("photo"),
                         [this](auto& c) {
                           auto* hole = find_by_id(c.site.test_holes, hole_);
                           return hole ? &hole->photo : nullptr;
                         }),
              tr("Path of the picture"), true);
}

void PermitPanel::make_today() {
  add_gap();
  add_heading(tr("Looked at today"));
  for (const auto& [item, word] : EnumNames<DailyItem>::list) {
    auto* box = new GloveTick(text_from(translated_phrase(words_of_daily(item))), this);
    box->setAccessibleName(box->text());
    box->setMinimumHeight(glove);
    box->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    add_widget(box);
    daily_.push_back(box);
    connect(box, &QCheckBox::clicked, this, [this, which = item](bool on) { tick(which, on); });
  }
  daily_by_ = add_texts([] { return permit_part; });
  daily_by_->add(text_field(
      document_, tr("looked at by"), [](auto& c) { return &c.permit.daily.by; }, TextKind::name));
  daily_by_->add(day_field(document_, tr("looked at on"), [](auto& c) { return &c.permit.daily.date; }),
                 tr("As 2026-03-14"));
  add_gap();
  add_heading(tr("Pits"));
  pits_ = add_texts([] { return permit_part; });
  add_statement(*pits_, document_,
                {tr("what was seen in the pits"), tr("As: both sides firm, dry, ladders set"),
                 tr("competent person who saw the pits"), tr("pits seen on")},
                [](auto& c) { return &c.permit.pits_inspected; });
}

void PermitPanel::make_signatures() {
  add_gap();
  add_heading(tr("Go or no-go"));
  const auto choice = [this](const QString& label, GoSigned Permit::*who) {
    add_choice(
        label, labels_of<GoDecision>({{GoDecision::go, tr("go")}, {GoDecision::no_go, tr("NO-GO")}}, tr("not signed")),
        [this, who] { return row_of_word((document_.crossing().permit.*who).decision); },
        [this, who](int row) { sign(who, row); });
  };
  choice(tr("supervisor says"), &Permit::supervisor);
  choice(tr("crew says"), &Permit::crew);
  signed_ = add_texts([] { return permit_part; });
  signed_->add(text_field(
      document_, tr("supervisor, by name"), [](auto& c) { return &c.permit.supervisor.by; }, TextKind::name));
  signed_->add(day_field(document_, tr("supervisor, on"), [](auto& c) { return &c.permit.supervisor.date; }));
  signed_->add(text_field(
      document_, tr("crew, by name"), [](auto& c) { return &c.permit.crew.by; }, TextKind::name));
  signed_->add(day_field(document_, tr("crew, on"), [](auto& c) { return &c.permit.crew.date; }));
}

Date PermitPanel::today() const {
  const QDate day = today_();
  return {day.year(), day.month(), day.day()};
}

/// What was ticked on another day is not carried on: the first tick of a day begins anew.
void PermitPanel::tick(DailyItem item, bool done) {
  const std::string day = burrow::text_of(today());
  const std::string word(word_of(item));
  const std::string by = offered(TextKind::name, document_).toStdString();
  change(tr("Daily check"), [&](Crossing& c) {
    DailyCheck& check = c.permit.daily;
    if (check.date != day) check.done.clear();
    check.date = day;
    if (check.by.empty()) check.by = by;
    std::erase(check.done, word);
    if (done) check.done.push_back(word);
  });
}

void PermitPanel::sign(GoSigned Permit::*who, int row) {
  const std::string day = burrow::text_of(today());
  change(tr("Go or no-go"), [&](Crossing& c) {
    GoSigned& signature = c.permit.*who;
    signature.decision = word_or_none_at<GoDecision>(row);
    signature.date.reset();
    if (signature.decision) signature.date = day;
  });
}

QString PermitPanel::lines_html(const std::vector<PermitLine>& lines) const {
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='2' width='100%'>");
  for (const PermitLine& line : lines) {
    const QString mark = line.state == PermitState::holds  ? QStringLiteral("✓")
                         : line.state == PermitState::open ? QStringLiteral("?")
                                                           : QStringLiteral("✕");
    const QColor colour = line.state == PermitState::holds  ? theme_.fine
                          : line.state == PermitState::open ? theme_.ink
                                                            : theme_.stop;
    const QString what = text_from(line.what).toHtmlEscaped();
    QString found = text_from(line.found).toHtmlEscaped();
    if (line.level_m) found = tr("%1; level %2").arg(found, text_of(*line.level_m, Dimension::station));
    html +=
        QStringLiteral(
            "<tr><td valign='top' width='16' style='color:%1'><b>%2</b></td><td>%3<br>"
            "<span style='color:%4'>%5</span></td></tr>")
            .arg(colour.name(), mark, line.state == PermitState::holds ? what : QStringLiteral("<b>%1</b>").arg(what),
                 line.state == PermitState::blocks ? theme_.stop.name() : theme_.ink_soft.name(), found);
  }
  return html + QStringLiteral("</table>");
}

void PermitPanel::show_lines() {
  std::vector<PermitLine> lines = permit_lines(document_.crossing(), document_.assessment(), today());
  const int open = open_lines(lines);
  const bool blocked =
      std::any_of(lines.begin(), lines.end(), [](const PermitLine& l) { return l.state == PermitState::blocks; });
  const QString how_many = text_from(say_count("{} line is open.", "{} lines are open.", open));
  state_->setText(
      QStringLiteral("<b>%1</b>")
          .arg((blocked    ? tr("Do not bore: what is marked ✕ nobody can take on.") + QLatin1Char(' ') + how_many
                : open > 0 ? how_many
                           : tr("Every line holds today."))
                   .toHtmlEscaped()));
  std::stable_sort(lines.begin(), lines.end(), [](const PermitLine& a, const PermitLine& b) {
    return static_cast<int>(a.state) > static_cast<int>(b.state);
  });
  lines_->setText(lines_html(lines));
}

void PermitPanel::show_owners() {
  const std::vector<std::string> owners = owners_here(document_.crossing());
  if (std::find(owners.begin(), owners.end(), owner_) == owners.end())
    owner_ = owners.empty() ? std::string() : owners.front();
  std::vector<Card> cards;
  for (const std::string& owner : owners) {
    const OwnerContact contact = contact_of(document_.crossing().permit, owner);
    Card card;
    card.id = owner;
    card.title = text_from(owner);
    card.facts = (contact.phone.empty() ? tr("no number") : text_from(contact.phone)) + QStringLiteral(" · ") +
                 (contact.answered.how.empty() ? tr("not answered") : text_from(contact.answered.how));
    cards.push_back(std::move(card));
  }
  no_owners_->setVisible(cards.empty());
  owners_->setVisible(!cards.empty());
  contact_->setVisible(!cards.empty());
  owners_->show_cards(std::move(cards), owner_);
  contact_->catch_up();
}

void PermitPanel::show_holes() {
  const std::vector<TestHole>& holes = document_.crossing().site.test_holes;
  if (!find_by_id(holes, hole_)) hole_ = holes.empty() ? std::string() : holes.front().id;
  std::vector<Card> cards;
  for (const TestHole& hole : holes) {
    const Utility* utility = find_by_id(document_.crossing().site.utilities, hole.utility);
    Card card;
    card.id = hole.id;
    card.title = utility ? text_from(translated_phrase(display_name(*utility))) : text_from(hole.id);
    QStringList facts;
    facts << (hole.by.empty() ? tr("by nobody named") : text_from(hole.by));
    if (hole.date) facts << text_from(*hole.date);
    facts << (hole.elevation ? tr("level %1").arg(text_of(hole.elevation->m, Dimension::station)) : tr("no level"));
    facts << (hole.photo.empty() ? tr("no photo") : text_from(hole.photo));
    card.facts = facts.join(QStringLiteral(" · "));
    cards.push_back(std::move(card));
  }
  no_holes_->setVisible(cards.empty());
  holes_->setVisible(!cards.empty());
  photo_->setVisible(!cards.empty());
  holes_->show_cards(std::move(cards), hole_);
  photo_->catch_up();
}

void PermitPanel::refresh() {
  show_lines();
  show_owners();
  show_holes();
  for (TextForm* form : {numbers_, pits_, daily_by_, signed_}) form->catch_up();
  const DailyCheck& check = document_.crossing().permit.daily;
  const bool of_today = check.date == burrow::text_of(today());
  for (const auto& [item, word] : EnumNames<DailyItem>::list) {
    daily(item)->setChecked(of_today && std::find(check.done.begin(), check.done.end(), word) != check.done.end());
    daily(item)->setEnabled(!locked());
  }
}

QPushButton* PermitPanel::button(const QString& begins_with) const {
  for (QPushButton* one : findChildren<QPushButton*>())
    if (one->text().startsWith(begins_with)) return one;
  return nullptr;
}

QString PermitPanel::visible_text() const {
  return plain(state_) + plain(lines_);
}

}  // namespace burrow
