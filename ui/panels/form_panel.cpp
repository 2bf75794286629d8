#include "burrow/panels/form_panel.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QTextDocument>
#include <QTextDocumentFragment>
#include <QVBoxLayout>

#include "burrow/panels/entry_form.h"

namespace burrow {

FormPanel::FormPanel(Document& document, int refresh_ms, QWidget* parent)
    : LivePanel(document, refresh_ms, parent), page_(new QWidget), column_(new QVBoxLayout(page_)) {
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(page_);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->addWidget(scroll);
  column_->setContentsMargins(10, 8, 8, 10);
  column_->setSpacing(5);
  lock_ = add_text(tr("Read-only"));
  lock_->hide();
  connect(&document_, &Document::replaced, this, [this] {
    for (EntryForm* form : forms_) form->drop_typing();
    refresh_soon();
  });
}

void FormPanel::refresh_now() {
  show_lock();
  LivePanel::refresh_now();
  order_tabs();
}

void FormPanel::set_units(UnitSystem units) {
  for (EntryForm* form : forms_) form->set_units(units);
  LivePanel::set_units(units);
}

void FormPanel::set_theme(const Theme& theme) {
  for (EntryForm* form : forms_) form->set_theme(theme);
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

void FormPanel::change(const PartRef& part, PartValue value, const QString& step_name) {
  if (!document_.change(part, std::move(value), step_name) && !locked()) {
    lock_->setText(tr("Nothing is taken while something is being dragged."));
    lock_->show();
  }
  refresh();  // also puts a choice back that was not taken
  order_tabs();
}

QString FormPanel::text_of(double value, Dimension dimension) const {
  // A number and its unit stay on one line.
  return QString::fromStdString(format(value, dimension, units_)).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
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
  combo->installEventFilter(this);
  add_labelled(accessible_name, combo);
  return combo;
}

EntryForm* FormPanel::add_entries(const QString& standing_word) {
  auto* form = new EntryForm(document_, standing_word, page_);
  column_->addWidget(form);
  forms_.push_back(form);
  return form;
}

void FormPanel::add_gap() {
  column_->addSpacing(8);
}

void FormPanel::add_end() {
  column_->addStretch(1);
  colour_labels();
}

void FormPanel::add_labelled(const QString& label, QWidget* field) {
  auto* name = new QLabel(label, page_);
  name->setWordWrap(true);
  name->setBuddy(field);
  column_->addWidget(name);
  column_->addWidget(field);
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

bool FormPanel::eventFilter(QObject* watched, QEvent* event) {
  // The wheel scrolls the panel; it never turns a choice over which the pointer happens to pass.
  if (event->type() == QEvent::Wheel && qobject_cast<QComboBox*>(watched)) {
    event->ignore();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace burrow
