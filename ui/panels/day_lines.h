#pragma once
/// What the site log shows of a record and its answer.

#include <QString>
#include <QStringList>
#include <utility>
#include <vector>

#include "burrow/day/day.h"
#include "burrow/day/start_gate.h"
#include "burrow/drawing/theme.h"
#include "burrow/panels/card_list.h"
#include "day_deck.h"

class QComboBox;

namespace burrow {

struct DayShown {
  const Crossing& crossing;
  const Assessment& assessment;  ///< of the layout as it is
  const Tables& tables;
  const DayRecord* record = nullptr;
  const DayAnswer& day;
  const StartGate& gate;
  const Theme& theme;
  UnitSystem units = UnitSystem::metric;
  double now_s = 0;
  bool locked = false, resting = false;
  bool card = false;  ///< danger was tapped where nothing can be written down
};

DayDeck::State deck_state(const DayShown& shown);

struct DayTexts {
  std::vector<std::pair<QString, QString>> facts;
  QStringList why;
};
DayTexts day_texts(const DayAnswer& day, const Crossing& crossing, UnitSystem units);

/// The newest first.
std::vector<Card> reading_cards(const DayRecord* record, UnitSystem units);
void fill_records(QComboBox& records, const std::vector<DayRecord>& all, const std::string& shown);

/// One card for all that is struck, smelt, heard: what to do, whom to ring.
QString danger_html(const Crossing& crossing);

/// What is left to do after a bore that did not arrive, or in which something was struck; empty: nothing.
QString aftermath_text(const DayRecord& record);

}  // namespace burrow
