#include "burrow/document/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

#include "burrow/base/say.h"
#include "burrow/file/dictionary_file.h"

namespace burrow {

namespace {

/// Gives tr() the dictionary of the core. A text with two meanings has an entry "context|text" for the rarer one.
class FromDictionary : public QTranslator {
 public:
  using QTranslator::QTranslator;

  [[nodiscard]] bool isEmpty() const override { return spoken().texts.empty(); }

  QString translate(const char* context, const char* text, const char* /*disambiguation*/, int /*n*/) const override {
    if (!text || !*text) return {};
    const auto& texts = spoken().texts;
    auto it = texts.find(std::string(context ? context : "") + '|' + text);
    if (it == texts.end()) it = texts.find(std::string_view(text));
    return it == texts.end() ? QString() : QString::fromStdString(it->second);
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
  speak(dictionary_of(language.toStdString()).value_or(Dictionary()));
  QCoreApplication* app = QCoreApplication::instance();
  if (!app) return;
  if (!ours) {
    ours = new FromDictionary(app);
    of_qt = new QTranslator(app);
    QObject::connect(app, &QObject::destroyed, [] { ours = nullptr; });
  }
  QCoreApplication::removeTranslator(ours);
  QCoreApplication::removeTranslator(of_qt);
  if (spoken().language == "en") return;
  if (of_qt->load(QStringLiteral("qtbase_") + language, QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(of_qt);
  QCoreApplication::installTranslator(ours);
}

}  // namespace burrow
