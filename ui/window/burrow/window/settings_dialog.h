#pragma once
/// What a person sets once: units, colours, and what every new crossing begins with. Everything takes effect at once.

#include <QDialog>
#include <optional>

#include "burrow/base/display_precision.h"
#include "burrow/base/enum_names.h"
#include "burrow/base/quantity_text.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

class QLabel;
class QPushButton;

namespace burrow {

enum class Colours { light, dark, sunlight, as_desktop };
template <>
struct EnumNames<Colours> {
  static constexpr std::pair<Colours, std::string_view> list[] = {{Colours::light, "light"},
                                                                  {Colours::dark, "dark"},
                                                                  {Colours::sunlight, "sunlight"},
                                                                  {Colours::as_desktop, "as-desktop"}};
};

/// Tool, air and limits for new crossings, kept as a crossing file in a folder of the person's own. An empty folder
/// keeps nothing.   Evidence: Settings.*
class CrewDefaults {
 public:
  CrewDefaults(QString folder, const Tables& tables) : folder_(std::move(folder)), tables_(tables) {}
  /// Empty: none is kept, or it cannot be read (a damaged file is left where it is).
  [[nodiscard]] std::optional<Crossing> kept() const;
  /// Errors: the folder cannot be written.
  Result<void> keep(const Crossing& crossing) const;
  Result<void> forget() const;
  [[nodiscard]] const Tables& tables() const { return tables_; }

 private:
  [[nodiscard]] QString path() const;
  QString folder_;
  const Tables& tables_;
};

struct SettingsNow {
  UnitSystem units = UnitSystem::metric;
  Colours colours = Colours::light;
  DisplayPrecision fineness = DisplayPrecision::usual;
  QString language = QStringLiteral("as-desktop");  ///< or one of `languages()`; counts from the next start
};

class SettingsDialog : public QDialog {
  Q_OBJECT

 public:
  SettingsDialog(const SettingsNow& now, const CrewDefaults& own, const Crossing& open, QWidget* parent);

 Q_SIGNALS:
  void units_wanted(burrow::UnitSystem units);
  void colours_wanted(burrow::Colours colours);
  void fineness_wanted(burrow::DisplayPrecision fineness);
  void language_wanted(const QString& language);
  void hints_wanted();

 private:
  void show_own();

  const CrewDefaults& own_;
  UnitSystem units_;
  QLabel* result_text_;
  QLabel* wrong_;
  QPushButton* forget_;
};

}  // namespace burrow
