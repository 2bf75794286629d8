#include "burrow/widgets/glossary.h"

#include <QAbstractButton>
#include <QApplication>
#include <QFile>
#include <QGroupBox>
#include <QHelpEvent>
#include <QLabel>
#include <QRegularExpression>
#include <QToolTip>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "watch_program.h"

namespace burrow {

namespace {

std::vector<Term> read_glossary() {
  const QString own = QStringLiteral(":/help/%1/09-words.md").arg(text_from(dictionary().language));
  QFile file(QFile::exists(own) ? own : QStringLiteral(":/help/09-words.md"));
  if (!file.open(QIODevice::ReadOnly)) return {};
  std::vector<Term> terms;
  static const QRegularExpression entry(QStringLiteral("^\\*\\*(.+?)\\*\\* – (.+)$"),
                                        QRegularExpression::DotMatchesEverythingOption);
  static const QRegularExpression between(QStringLiteral("\\s*[,()]\\s*"));
  for (const QString& paragraph : QString::fromUtf8(file.readAll()).split(QStringLiteral("\n\n"))) {
    const QRegularExpressionMatch match = entry.match(paragraph.trimmed());
    if (!match.hasMatch()) continue;
    Term term{match.captured(1), {}, match.captured(2).simplified()};
    for (const QString& one : term.title.split(between, Qt::SkipEmptyParts)) term.spelt.push_back(one.toLower());
    terms.push_back(std::move(term));
  }
  return terms;
}

/// Length of the longest spelling of a term that stands in the text as a word; 0: none.
qsizetype stands_in(const Term& term, const QString& text) {
  qsizetype longest = 0;
  for (const QString& one : term.spelt) {
    const QRegularExpression word(QStringLiteral("(?<![\\p{L}])%1(?![\\p{L}])").arg(QRegularExpression::escape(one)),
                                  QRegularExpression::CaseInsensitiveOption);
    if (one.size() > longest && word.match(text).hasMatch()) longest = one.size();
  }
  return longest;
}

QString text_of(const QWidget& w) {
  if (const auto* label = qobject_cast<const QLabel*>(&w)) return label->text();
  if (const auto* button = qobject_cast<const QAbstractButton*>(&w)) return button->text();
  if (const auto* box = qobject_cast<const QGroupBox*>(&w)) return box->title();
  return {};
}

class Explainer : public QObject {
 public:
  using QObject::QObject;
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() != QEvent::ToolTip) return QObject::eventFilter(watched, event);
    const auto* w = qobject_cast<QWidget*>(watched);
    if (!w || !w->toolTip().isEmpty()) return QObject::eventFilter(watched, event);
    const QString tip = explained(text_of(*w));
    if (tip.isEmpty()) return QObject::eventFilter(watched, event);
    QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), tip, const_cast<QWidget*>(w));
    return true;
  }
};

}  // namespace

const std::vector<Term>& glossary() {
  static const std::vector<Term> terms = read_glossary();
  return terms;
}

QString explained(const QString& text) {
  constexpr qsizetype a_sentence = 60;  // a text that explains itself needs no tip
  if (text.isEmpty() || text.size() > a_sentence) return {};
  QString plain = text;
  plain.remove(QLatin1Char('&'));
  std::vector<std::pair<qsizetype, const Term*>> found;
  for (const Term& term : glossary())
    if (const qsizetype length = stands_in(term, plain)) found.emplace_back(length, &term);
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  QString tip;
  for (std::size_t i = 0; i < found.size() && i < 2; ++i)
    tip += QStringLiteral("<p><b>%1</b> – %2</p>")
               .arg(found[i].second->title.toHtmlEscaped(), found[i].second->means.toHtmlEscaped());
  return tip;
}

void explain_words() {
  watch_program<Explainer>();
}

}  // namespace burrow
