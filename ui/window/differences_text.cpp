#include "differences_text.h"

#include <QCoreApplication>
#include <QStringList>

#include "burrow/document/text.h"
#include "burrow/file/differences.h"

namespace burrow {

namespace {

struct DifferenceWords {
  Q_DECLARE_TR_FUNCTIONS(burrow::Differences)
};

QString value_text(const std::string& value) {
  return value.empty() ? DifferenceWords::tr("not there") : text_from(value);
}

}  // namespace

QString differences_text(const std::string& one, const std::string& other, const QString& one_name,
                         const QString& other_name) {
  constexpr std::size_t at_most = 60;
  const Result<std::vector<Difference>> all = differences(one, other);
  if (!all) return DifferenceWords::tr("They cannot be compared: %1").arg(text_from(translated_error(all.error())));
  if (all->empty()) return DifferenceWords::tr("No difference.");
  QStringList lines;
  for (std::size_t i = 0; i < std::min(at_most, all->size()); ++i) {
    const Difference& d = (*all)[i];
    lines << text_from(d.where);
    lines << QStringLiteral("    %1: %2").arg(one_name, value_text(d.one));
    lines << QStringLiteral("    %1: %2").arg(other_name, value_text(d.other));
  }
  if (all->size() > at_most) lines << DifferenceWords::tr("and %1 more").arg(all->size() - at_most);
  return lines.join(QLatin1Char('\n'));
}

}  // namespace burrow
