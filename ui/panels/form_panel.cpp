#include "burrow/panels/form_panel.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTextDocument>
#include <QTextDocumentFragment>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "flow_row.h"

namespace burrow {

namespace {
constexpr int label_share = 2, field_share = 3;  ///< of the width
}

FormPanel::FormPanel(Document& document, int refresh_ms, QWidget* parent)
    : LivePanel(document, refresh_ms, parent),
      scroll_(new QScrollArea(this)),
      page_(new QWidget),
      column_(new QVBoxLayout(page_)) {
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  scroll_->setWidget(page_);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->addWidget(scroll_);
  column_->setContentsMargins(10, 8, 8, 10);
  column_->setSpacing(5);
  lock_ = add_text(tr("Read-only"));
  lock_->hide();
  connect(&document_, &Document::replaced, this, [this] {
    for (EntryForm* form : forms_) form->drop_typing();
    for (TextForm* form : texts_) form->drop_typing();
    refresh_soon();
  });
}

void FormPanel::add_above(QWidget* widget) {
  static_cast<QVBoxLayout*>(layout())->insertWidget(0, widget);
}

void FormPanel::refresh_now() {
  show_lock();
  LivePanel::refresh_now();
  show_choices();
  order_tabs();
}

void FormPanel::set_units(UnitSystem units) {
  for (EntryForm* form : forms_) form->set_units(units);
  LivePanel::set_units(units);
}

void FormPanel::set_theme(const Theme& theme) {
  for (EntryForm* form : forms_) form->set_theme(theme);
  for (TextForm* form : texts_) form->set_theme(theme);
  for (CardList* list : lists_) list->set_theme(theme);
  LivePanel::set_theme(theme);
  colour_labels();
}

void FormPanel::colour_labels() {
  const QPalette colours = palette();
  QPalette soft = colours;
  soft.setColor(QPalette::WindowText, theme_.ink_soft);
  for (QLabel* label : soft_) label->setPalette(soft);
  QPalette alarm = colours;
  alarm.setColor(QPalette::WindowText, theme_.stop);
  lock_->setPalette(alarm);
}

bool FormPanel::locked() const {
  return document_.crossing().version > known_file_version;
}

void FormPanel::show_lock() {
  lock_->setText(locked() ? tr("Read-only: %1.").arg(document_.read_only_because()) : QString());
  lock_->setVisible(locked());
}

void FormPanel::change(const QString& step_name, const Edit& edit) {
  if (!document_.change(step_name, edit) && !locked()) {
    lock_->setText(document_.in_session()
                       ? tr("Nothing is taken while something is being dragged.")
                       : tr("Not taken: a bore is under way with the layout of its start. End its record first."));
    lock_->show();
  }
  refresh();  // also puts a choice back that was not taken
  show_choices();
  order_tabs();
}

QString FormPanel::text_of(double value, Dimension dimension) const {
  // A number and its unit stay on one line.
  return text_from(format(value, dimension, units_)).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
}

QString FormPanel::plain(const QLabel* label) {
  QString text = label->text();
  if (Qt::mightBeRichText(text)) text = QTextDocumentFragment::fromHtml(text).toPlainText();
  return text.replace(QChar(QChar::Nbsp), QLatin1Char(' ')) + QLatin1Char('\n');
}

void FormPanel::order_tabs() {
  std::vector<QWidget*> order;
  for (int i = 0; i < column_->count(); ++i) {
    QWidget* widget = column_->itemAt(i)->widget();
    if (auto* form = qobject_cast<EntryForm*>(widget)) {
      for (int row = 0; row < form->count(); ++row) order.push_back(form->entry(row));
    } else if (widget && (widget->focusPolicy() & Qt::TabFocus)) {
      order.push_back(widget);
    } else if (widget) {
      for (QWidget* child : widget->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
        if (child->focusPolicy() & Qt::TabFocus) order.push_back(child);
    }
  }
  if (order == tab_order_) return;
  for (std::size_t i = 1; i < order.size(); ++i) setTabOrder(order[i - 1], order[i]);
  tab_order_ = std::move(order);
}

QLabel* FormPanel::add_heading(const QString& text) {
  auto* label = new QLabel(text, page_);
  QFont bold = label->font();
  bold.setBold(true);
  label->setFont(bold);
  label->setWordWrap(true);
  column_->addWidget(label);
  return label;
}

QLabel* FormPanel::add_text(const QString& accessible_name, bool soft) {
  auto* label = new QLabel(page_);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  label->setAccessibleName(accessible_name);
  label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Minimum);
  QSizePolicy policy = label->sizePolicy();
  policy.setHeightForWidth(true);
  label->setSizePolicy(policy);
  column_->addWidget(label);
  if (soft) soft_.push_back(label);
  return label;
}

QComboBox* FormPanel::add_combo(const QString& accessible_name) {
  auto* combo = new QComboBox(page_);
  combo->setAccessibleName(accessible_name);
  combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  combo->setMinimumContentsLength(6);
  combo->setFocusPolicy(Qt::StrongFocus);
  add_labelled(accessible_name, combo);
  return combo;
}

EntryForm* FormPanel::add_entries(const QString& standing_word, bool beside_choices) {
  auto* form = new EntryForm(document_, standing_word, page_);
  if (beside_choices) form->set_shares(label_share, field_share);
  column_->addWidget(form);
  forms_.push_back(form);
  return form;
}

TextForm* FormPanel::add_texts(std::function<ItemRef()> part) {
  auto* form = new TextForm(document_, std::move(part), page_);
  column_->addWidget(form);
  texts_.push_back(form);
  return form;
}

CardList* FormPanel::add_list(const QString& accessible_name, std::size_t most_rows) {
  auto* list = new CardList(accessible_name, most_rows, page_);
  column_->addWidget(list);
  lists_.push_back(list);
  return list;
}

QComboBox* FormPanel::add_choice(const QString& label, const QStringList& words, std::function<int()> shown,
                                 std::function<void(int)> chosen, bool long_words) {
  auto* row = new QWidget(page_);
  auto* both = new QBoxLayout(long_words ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight, row);
  both->setContentsMargins(0, 0, 0, 0);
  both->setSpacing(long_words ? 5 : 8);
  auto* name = new QLabel(label, row);
  name->setWordWrap(true);
  auto* combo = new QComboBox(row);
  combo->setAccessibleName(label);
  combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  combo->setMinimumContentsLength(4);
  combo->setFocusPolicy(Qt::StrongFocus);
  combo->addItems(words);
  name->setBuddy(combo);
  both->addWidget(name, long_words ? 0 : label_share);
  both->addWidget(combo, long_words ? 0 : field_share);
  column_->addWidget(row);
  connect(combo, &QComboBox::activated, this, [this, shown, chosen = std::move(chosen)](int at) {
    if (at == shown()) return;
    chosen(at);
    show_choices();
  });
  choices_.push_back({combo, std::move(shown)});
  return combo;
}

void FormPanel::show_choices() {
  for (const Choice& choice : choices_) {
    choice.combo->setCurrentIndex(choice.shown());
    choice.combo->setEnabled(!locked());
  }
}

std::vector<QPushButton*> FormPanel::add_buttons(const QStringList& words) {
  auto* row = new QWidget(page_);
  auto* flow = new FlowRow(row);
  std::vector<QPushButton*> buttons;
  for (const QString& text : words) {
    auto* button = new QPushButton(text, row);
    button->setAutoDefault(false);
    flow->addWidget(button);
    buttons.push_back(button);
  }
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  row->setSizePolicy(policy);
  column_->addWidget(row);
  return buttons;
}

int FormPanel::widgets_so_far() const {
  return column_->count();
}

std::vector<QWidget*> FormPanel::widgets_after(int then) const {
  std::vector<QWidget*> cards;
  for (int i = then; i < column_->count(); ++i)
    if (QWidget* widget = column_->itemAt(i)->widget()) cards.push_back(widget);
  return cards;
}

void FormPanel::bring_into_view(QWidget* widget) {
  scroll_->ensureWidgetVisible(widget, 0, scroll_->viewport()->height() / 2);
}

void FormPanel::bring_to_top(QWidget* widget) {
  page_->layout()->activate();
  scroll_->verticalScrollBar()->setValue(widget->mapTo(page_, QPoint()).y());
}

void FormPanel::add_gap() {
  column_->addSpacing(8);
}

void FormPanel::add_end() {
  column_->addStretch(1);
  colour_labels();
}

QLabel* FormPanel::add_labelled(const QString& label, QWidget* field) {
  auto* name = new QLabel(label, page_);
  name->setWordWrap(true);
  name->setBuddy(field);
  column_->addWidget(name);
  column_->addWidget(field);
  return name;
}

void FormPanel::add_widget(QWidget* widget) {
  column_->addWidget(widget);
}

QString FormPanel::facts_html(const Facts& facts) const {
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='2' width='100%'>");
  for (const auto& [name, value] : facts)
    html += QStringLiteral("<tr><td valign='top' width='48%'>%1</td><td valign='top'><b>%2</b></td></tr>")
                .arg(name.toHtmlEscaped(), value.toHtmlEscaped().replace(QLatin1Char('\n'), QStringLiteral("<br>")));
  return html + QStringLiteral("</table>");
}

}  // namespace burrow
