#include "burrow/document/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

#include "burrow/document/text.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

/// Gives tr() the dictionary of the core. A context is looked up only where the code gives one (tr's second text): the
/// name of a class is none, so that pages and core share a text. The forms of counted texts are the dictionary's, in
/// English too; Qt puts the number in.
class FromDictionary : public QTranslator {
 public:
  using QTranslator::QTranslator;

  [[nodiscard]] bool isEmpty() const override { return dictionary().texts.empty(); }

  QString translate(const char* /*class_name*/, const char* text, const char* context, int n) const override {
    if (!text || !*text) return {};
    if (n >= 0) {
      const std::string* form = counted_text(text, static_cast<unsigned long long>(n));
      if (form) return text_from(*form);
    }
    const auto& texts = dictionary().texts;
    auto it = context && *context ? texts.find(in_context(context, text)) : texts.end();
    if (it == texts.end()) it = texts.find(std::string_view(text));
    return it == texts.end() ? QString() : text_from(it->second);
  }
};

}  // namespace

QStringList languages() {
  return {QStringLiteral("en"), QStringLiteral("de")};
}

QString resolve_language(const QString& wanted) {
  if (wanted == QLatin1String("as-desktop"))
    return QLocale::system().language() == QLocale::German ? QStringLiteral("de") : QStringLiteral("en");
  return languages().contains(wanted) ? wanted : QStringLiteral("en");
}

void speak_language(const QString& language) {
  static FromDictionary* ours = nullptr;
  static QTranslator* of_qt = nullptr;
  use_dictionary(dictionary_of(language.toStdString()).value_or(Dictionary()));
  QCoreApplication* app = QCoreApplication::instance();
  if (!app) return;
  if (!ours) {
    ours = new FromDictionary(app);
    of_qt = new QTranslator(app);
    QObject::connect(app, &QObject::destroyed, [] { ours = nullptr; });
  }
  QCoreApplication::removeTranslator(ours);
  QCoreApplication::removeTranslator(of_qt);
  if (dictionary().language != "en" &&
      of_qt->load(QStringLiteral("qtbase_") + language, QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(of_qt);
  QCoreApplication::installTranslator(ours);
}

}  // namespace burrow
