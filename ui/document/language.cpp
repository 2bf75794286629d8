#include "burrow/document/language.h"

#include <QCoreApplication>
#include <QGuiApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

#include <optional>

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
  QStringList all;
  for (const std::string& one : languages_known()) all << text_from(one);
  return all;
}

QString language_name(const QString& language) {
  if (language == QLatin1String("en")) return QStringLiteral("English");
  // "español de España": of no country here.
  QString name = QLocale(language).nativeLanguageName().section(QLatin1Char(' '), 0, 0);
  if (!name.isEmpty()) name[0] = name[0].toUpper();
  const std::optional<Dictionary> own = dictionary_of(language.toStdString());
  if (!own || own->read_twice) return name;
  constexpr const char* once = translatable("translated without a second reader");
  const auto words = own->texts.find(std::string_view(once));
  return QStringLiteral("%1 (%2)").arg(name, words == own->texts.end() ? text_from(once) : text_from(words->second));
}

QString resolve_language(const QString& wanted) {
  const QString asked =
      wanted == QLatin1String("as-desktop") ? QLocale::system().name().section(QLatin1Char('_'), 0, 0) : wanted;
  return languages().contains(asked) ? asked : QStringLiteral("en");
}

void speak_language(const QString& language) {
  static FromDictionary* ours = nullptr;
  static QTranslator* of_qt = nullptr;
  use_dictionary(dictionary_of(language.toStdString()).value_or(Dictionary()));
  QCoreApplication* app = QCoreApplication::instance();
  if (!app) return;
  QGuiApplication::setLayoutDirection(QLocale(text_from(dictionary().language)).textDirection());
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
