/// Nothing only in the file: whatever a crossing file can hold is reached by some entry or choice of the window, or
/// stands below with the other means by which it is entered.

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "burrow/document/surroundings.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/schema_file.h"
#include "burrow/panels/card_list.h"
#include "support/random_crossing.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

using Pointers = std::set<std::string>;

/// "/site/utilities/*/path/*/x_m".
std::string without_numbers(const std::string& pointer) {
  static const std::regex number("/[0-9]+(?=/|$)");
  std::string plain = std::regex_replace(pointer, number, "/*");
  // Both pits, all sides and every soil have the same entries.
  static const std::regex pit("^/pits/(launch|exit)/"), side("/sides/(bore|back|left|right)/");
  plain = std::regex_replace(plain, pit, "/pits/*/");
  plain = std::regex_replace(plain, side, "/sides/*/");
  static const std::regex soil("^/site/(strata|strips)/[*]/values/");
  plain = std::regex_replace(plain, soil, "/site/soil/values/");
  static const std::regex limit("^/limits/[a-z_0-9]+");
  return std::regex_replace(plain, limit, "/limits/*");
}

nlohmann::json flat(const Crossing& crossing) {
  return nlohmann::json::parse(write_crossing(crossing)).flatten();
}

/// Every member that the schema of the format knows, by its pointer.
class SchemaWalk {
 public:
  explicit SchemaWalk(const Tables& tables) : schema_(nlohmann::json::parse(crossing_schema(tables))) {
    walk(schema_, "");
  }
  [[nodiscard]] const Pointers& members() const { return members_; }

 private:
  void walk(const nlohmann::json& part, const std::string& here) {
    if (part.contains("$ref")) {
      const std::string name = part["$ref"].get<std::string>().substr(std::string("#/$defs/").size());
      return walk(schema_["$defs"][name], here);
    }
    if (part.contains("anyOf")) {
      for (const nlohmann::json& choice : part["anyOf"])
        if (choice.value("type", "") != "null") walk(choice, here);
      return;
    }
    bool leaf = true;
    const auto inner = [&](const nlohmann::json& of, const std::string& place) {
      leaf = false;
      walk(of, place);
    };
    if (part.contains("properties"))
      for (const auto& [key, of] : part["properties"].items()) inner(of, here + "/" + key);
    if (part.contains("items") && part["items"].is_object()) inner(part["items"], here + "/*");
    if (part.contains("prefixItems"))
      for (const nlohmann::json& of : part["prefixItems"]) inner(of, here + "/*");
    if (leaf) members_.insert(without_numbers(here));
  }

  nlohmann::json schema_;
  Pointers members_;
};

/// And no fewer than those that crossings filled at random hold.
Pointers members_of_random_crossings() {
  Pointers all;
  for (unsigned seed = 1; seed <= 20; ++seed) {
    Crossing c = test::random_crossing(seed);
    c.practice.clear();  // a file of its own kind
    const nlohmann::json members = flat(c);
    for (const auto& [pointer, value] : members.items())
      if (!value.is_null() && !(value.is_structured() && value.empty())) all.insert(without_numbers(pointer));
  }
  // Keys of nobody's, which the filler strews in.
  std::erase_if(
      all, [](const std::string& p) { return std::regex_search(p, std::regex("/(zz|aa|a~1b~0c|empty|deep|)(/|$)")); });
  return all;
}

/// A crossing with one of each thing.
Crossing rich() {
  Crossing c = *read_crossing(*read_text_file(sample_path("house-service").toStdString()), tables_for_tests());
  for (const auto& [kind, word] : EnumNames<AroundKind>::list) add_around(c, kind);
  add_around(c, AroundKind::trench);
  c.site.strips.back().soil = "firm-clay";
  SurfaceFeature house;
  house.id = "house";
  house.kind = SurfaceKind::building;
  house.from = Length{20};
  house.to = Length{26};
  c.site.surface.push_back(house);
  c.limits["separation_gas_m"].value = 0.8;
  c.site.surface.front().levels.pegs.push_back({});
  c.pits.launch.sides.bore.kind.set(SideKind::benched);
  c.pits.launch.sides.bore.benches.push_back({});
  c.pits.launch.sides.back.kind.set(SideKind::shielded);
  c.site.utilities.back().status = UtilityStatus::abandoned;
  c.site.utilities.front().owner = "the operator";
  return c;
}

class Walk {
 public:
  explicit Walk(TestWindow& window) : w_(window) {}

  void through_page(int page) {
    w_.window.side().setCurrentIndex(page);
    settle(w_.window);
    through_entries(page);
    QWidget* shown = w_.window.side().currentWidget();
    for (CardList* list : shown->findChildren<CardList*>())
      for (int row = 0; row < std::min(list->count(), 8); ++row) {
        if (!list->isVisible() || row >= static_cast<int>(list->cards().size())) continue;
        Q_EMIT list->chosen(QString::fromStdString(list->cards()[static_cast<std::size_t>(row)].id));
        settle(w_.window);
        through_entries(page);
      }
  }
  [[nodiscard]] const Pointers& reached() const { return reached_; }

 private:
  void through_entries(int page) {
    QWidget* shown = w_.window.side().currentWidget();
    for (QLineEdit* entry : shown->findChildren<QLineEdit*>())
      if (is_new(page, entry)) type_into(entry);
    for (QPlainTextEdit* entry : shown->findChildren<QPlainTextEdit*>())
      if (is_new(page, entry)) {
        entry->setFocus();
        entry->selectAll();
        QTest::keyClicks(entry, QStringLiteral("typed"));
        w_.window.drawing().setFocus();
        take_difference();
      }
    for (QCheckBox* choice : shown->findChildren<QCheckBox*>())
      if (is_new(page, choice)) {
        choice->click();
        if (!take_difference()) choice->click();
      }
    for (QComboBox* choice : shown->findChildren<QComboBox*>())
      if (is_new(page, choice))
        for (int row = 0; row < choice->count(); ++row) {
          if (row == choice->currentIndex()) continue;
          choice->setCurrentIndex(row);
          Q_EMIT choice->activated(row);
          if (take_difference()) break;
        }
  }

  /// Once a page for entries of one name, since lists show the same entries for each of their things.
  bool is_new(int page, const QWidget* entry) {
    if (!entry->isVisible() || !entry->isEnabled() || entry->accessibleName().isEmpty()) return false;
    const auto& around = w_.window.side().surroundings().picked();
    const int kind = page == static_cast<int>(SideColumn::Page::surroundings) ? static_cast<int>(around.kind) : 0;
    const QString name = QStringLiteral("%1 %2 %3").arg(page).arg(kind).arg(entry->accessibleName());
    if (done_.contains(name)) return false;
    done_ << name;
    return true;
  }

  void type_into(QLineEdit* entry) {
    for (const char* text : {"3.5", "0.5", "0.05", "7", "120", "2026-01-15", "99.2", "typed", "2", "50 %"}) {
      entry->setFocus();
      entry->selectAll();
      QTest::keyClicks(entry, QString::fromLatin1(text));
      QTest::keyClick(entry, Qt::Key_Return);
      if (take_difference()) return;
      QTest::keyClick(entry, Qt::Key_Escape);
    }
  }

  /// What has changed is reached; then it is undone.
  bool take_difference() {
    Document& document = w_.window.document();
    if (document.undo_stack().index() == 0) return false;
    const nlohmann::json now = flat(document.crossing());
    while (document.undo_stack().index() > 0) document.undo_stack().undo();
    const nlohmann::json before = flat(document.crossing());
    for (const auto* one : {&now, &before})
      for (const auto& [pointer, value] : one->items()) {
        const auto& other = one == &now ? before : now;
        if (!other.contains(pointer) || other[pointer] != value) reached_.insert(without_numbers(pointer));
      }
    return true;
  }

  TestWindow& w_;
  Pointers reached_;
  QStringList done_;
};

/// Entered by other means than an entry or a choice of a page, each said.
bool entered_otherwise(const std::string& pointer) {
  static const std::pair<const char*, const char*> means[] = {
      {"^/(format|version)$", "of the file itself"},
      {"/id$", "given by the program"},
      {"^/site/(ground|water)/", "dragged and typed at its points on the drawing"},
      {"^/site/strata/.*/top/", "dragged and typed at its points on the drawing"},
      {"^/site/ground_points/", "imported"},
      {"^/site/background/", "imported; its meaning is chosen in the list of the utilities"},
      {"^/site/utilities/.*/path/", "dragged and typed at its points on the drawing"},
      {"^/bore/(launch|exit)/", "dragged and typed on the drawing"},
      {"^/record/", "read on the day, by buttons"},
      {"^/muted/", "accepted with a reason, in the list of findings"},
      {"^/alternatives/", "kept by the page of alternatives, as whole layouts"},
      {"^/practice(/|$)", "a practice bore, made by its page"},
      {"^/locks/", "the lock beside a value, Ctrl+L in it, and of the selected thing (LockCommand.*)"},
      {"^/pits/.*/floor_outline/", "corners, on the drawing and by the button of the pit"},
      // Seen after another choice, which the walk undoes before it goes on.
      {"^/air/line/.*/kind$", "by the button that adds the part"},
      {"^/bore/model/calibrated_records/", "by learning from records"},
      {"^/pipe/hose_rating_n$", "of a pipe pulled by its hose"},
      {"^/pits/.*/(allowance_m|shield/depth_m|signs/none_seen/how)$", "after the side, the pit or the sign was chosen"},
      {"^/pits/.*/sides/.*/(run_per_rise|support_foot_m|support_top_m|upright_m)$", "after the kind of the side"},
      {"^/site/nothing_above/", "while nothing is entered above"},
      {"^/site/test_holes/.*/(by|date|agreed/.*)$", "at a hole that was dug, and one that contradicts its record"},
      {"^/site/utilities/.*/located/moved$", "kept by a drag, gone once it is entered anew how it was located"},
      {"^/site/utilities/.*/(located/how|recorded/(date|source))$", "asked with the preset of how it was located"},
  };
  return std::any_of(std::begin(means), std::end(means),
                     [&](const auto& m) { return std::regex_search(pointer, std::regex(m.first)); });
}

TEST(NothingOnlyInTheFile, EveryMember_IsReachedByAnEntryOrSaidOtherwise) {
  TestWindow w("house-service");
  w.window.document().start_from(rich(), false);
  settle(w.window);
  Walk walk(w);
  for (int page = 0; page < w.window.side().count(); ++page) walk.through_page(page);
  const Pointers all = SchemaWalk(tables_for_tests()).members();
  ASSERT_GT(all.size(), 250u);
  for (const std::string& pointer : all) {
    const bool reached = std::any_of(walk.reached().begin(), walk.reached().end(), [&](const std::string& r) {
      return r == pointer || r.starts_with(pointer + "/") || pointer.starts_with(r + "/");
    });
    EXPECT_TRUE(reached || entered_otherwise(pointer)) << pointer << " is reached by no entry of the window";
  }
}

// The walk over the schema leaves nothing out that a file can hold.
TEST(NothingOnlyInTheFile, SchemaKnowsWhatFilesHold) {
  const Pointers all = SchemaWalk(tables_for_tests()).members();
  for (const std::string& pointer : members_of_random_crossings()) {
    const bool known = std::any_of(all.begin(), all.end(), [&](const std::string& member) {
      return member == pointer || member.starts_with(pointer + "/") || pointer.starts_with(member + "/");
    });
    EXPECT_TRUE(known) << pointer;
  }
}

}  // namespace
}  // namespace burrow
