#pragma once
/// Lessons that stand ready, and words of the practice page.

#include <QCoreApplication>
#include <QString>
#include <array>

#include "burrow/practice/practice.h"

namespace burrow {

struct Lesson {
  const char* sample;
  const char* title;
};
inline const std::array<Lesson, 5>& all_lessons() {
  static const std::array<Lesson, 5> lessons{
      {{"lesson-level", QT_TRANSLATE_NOOP("lessons", "The level lies")},
       {"lesson-sight", QT_TRANSLATE_NOOP("lessons", "Aimed past the stake")},
       {"lesson-sag", QT_TRANSLATE_NOOP("lessons", "Sag in soft clay")},
       {"lesson-shallow", QT_TRANSLATE_NOOP("lessons", "Too shallow in sand")},
       {"lesson-mark", QT_TRANSLATE_NOOP("lessons", "The mark that was wrong")}}};
  return lessons;
}

inline PracticeChoice word_at_row(std::size_t row) {
  return EnumNames<PracticeChoice>::list[row].first;
}

inline QString choice_words(PracticeChoice choice) {
  switch (choice) {
    case PracticeChoice::fix:
      return QCoreApplication::translate("practice", "Locate the tool");
    case PracticeChoice::level:
      return QCoreApplication::translate("practice", "Lay the level on");
    case PracticeChoice::stop_and_look:
      return QCoreApplication::translate("practice", "Stop and look");
    case PracticeChoice::leave_and_expose:
      return QCoreApplication::translate("practice", "Leave the tool and dig down");
    case PracticeChoice::back_out:
      return QCoreApplication::translate("practice", "Back out");
    case PracticeChoice::go_on:
      break;
  }
  return QCoreApplication::translate("practice", "Drive to the next mark");
}

}  // namespace burrow
