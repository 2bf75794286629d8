#pragma once
/// The crossings that come with the program: what each is called and whether it is a lesson.

#include <QCoreApplication>
#include <QString>
#include <vector>

namespace burrow {

struct Sample {
  const char* file;
  const char* name;
  bool lesson = false;
  [[nodiscard]] QString key() const { return QString::fromLatin1(file); }
  [[nodiscard]] QString title() const { return QCoreApplication::translate("samples", name); }
};

inline const std::vector<Sample>& samples_of_the_program() {
  static const std::vector<Sample> all{
      {"house-service", QT_TRANSLATE_NOOP("samples", "House service under a two-lane road")},
      {"rail-siding", QT_TRANSLATE_NOOP("samples", "Under a rail siding")},
      {"car-park-duct", QT_TRANSLATE_NOOP("samples", "Duct under a car park")},
      {"four-faults", QT_TRANSLATE_NOOP("samples", "Four faults")},
      {"sixty-utilities", QT_TRANSLATE_NOOP("samples", "Sixty utilities")},
      {"day-under-way", QT_TRANSLATE_NOOP("samples", "A day: the bore under way")},
      {"day-struck", QT_TRANSLATE_NOOP("samples", "A day: something was struck")},
      {"day-finished", QT_TRANSLATE_NOOP("samples", "A day: finished")},
      {"first-lesson", QT_TRANSLATE_NOOP("samples", "A first lesson"), true},
      {"lesson-level", QT_TRANSLATE_NOOP("samples", "Lesson: bore A"), true},
      {"lesson-sight", QT_TRANSLATE_NOOP("samples", "Lesson: bore B"), true},
      {"lesson-sag", QT_TRANSLATE_NOOP("samples", "Lesson: bore C"), true},
      {"lesson-shallow", QT_TRANSLATE_NOOP("samples", "Lesson: bore D"), true},
      {"lesson-mark", QT_TRANSLATE_NOOP("samples", "Lesson: bore E"), true},
      {"lesson-stone", QT_TRANSLATE_NOOP("samples", "Lesson: bore F"), true},
      {"lesson-trench", QT_TRANSLATE_NOOP("samples", "Lesson: bore G"), true}};
  return all;
}

}  // namespace burrow
