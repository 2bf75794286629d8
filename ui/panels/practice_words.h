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
inline const std::array<Lesson, 7>& all_lessons() {
  static const std::array<Lesson, 7> lessons{{{"lesson-level", QT_TRANSLATE_NOOP("lessons", "Bore A")},
                                              {"lesson-sight", QT_TRANSLATE_NOOP("lessons", "Bore B")},
                                              {"lesson-sag", QT_TRANSLATE_NOOP("lessons", "Bore C")},
                                              {"lesson-shallow", QT_TRANSLATE_NOOP("lessons", "Bore D")},
                                              {"lesson-mark", QT_TRANSLATE_NOOP("lessons", "Bore E")},
                                              {"lesson-stone", QT_TRANSLATE_NOOP("lessons", "Bore F")},
                                              {"lesson-trench", QT_TRANSLATE_NOOP("lessons", "Bore G")}}};
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
    case PracticeChoice::turn_level:
      return QCoreApplication::translate("practice", "Turn the level end for end");
    case PracticeChoice::go_on:
      break;
  }
  return QCoreApplication::translate("practice", "Drive to the next mark");
}

/// What the debrief says was asked for, and by what.
inline QString reason_words(PracticeReason reason) {
  switch (reason) {
    case PracticeReason::run_sheet:
      return QCoreApplication::translate("practice", "the run sheet stops here until the line is exposed");
    case PracticeReason::verdict:
      return QCoreApplication::translate("practice", "the verdict of this layout is Stop");
    case PracticeReason::pace:
      return QCoreApplication::translate("practice", "the pace is not what was expected");
    case PracticeReason::level_not_turned:
      return QCoreApplication::translate("practice", "nobody has turned the level end for end");
    case PracticeReason::advice:
      return QCoreApplication::translate("practice", "the readings ask for it");
    case PracticeReason::none:
      break;
  }
  return QCoreApplication::translate("practice", "nothing spoke against going on");
}

}  // namespace burrow
