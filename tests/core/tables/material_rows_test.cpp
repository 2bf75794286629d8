// Materials of utilities and kinds of building: ids, names, words of records in English and German.

#include "burrow/tables/material_rows.h"

#include <gtest/gtest.h>

#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

std::string row_of_text(std::string_view text, UtilityKind kind = UtilityKind::gas) {
  const UtilityMaterialRow* row = find_material(tables(), text, kind);
  return row ? row->id : "";
}

TEST(MaterialRows, EveryId_IsItsOwnRow) {
  ASSERT_GE(tables().utility_materials.size(), 10u);
  for (const UtilityMaterialRow& row : tables().utility_materials) {
    const UtilityKind kind = row.kinds.empty() ? UtilityKind::water : row.kinds.front();
    EXPECT_EQ(row_of_text(row.id, kind), row.id);
    EXPECT_EQ(row_of_text(row.name.english(), kind), row.id);
    for (const std::string& word : row.words)
      for (const char c : word) EXPECT_FALSE((c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80) << word;
  }
}

// Not entered, or a word that nobody put into a row: never a wall that bears more than the most brittle.
TEST(MaterialRows, NotKnown_HasNoRow) {
  for (const char* text : {"", "  ", "specimen pipe", "?", "fonte", "bois", "pipe", "Pappe", "piece", "opera"})
    EXPECT_EQ(row_of_text(text), "") << text;
  Utility utility;
  EXPECT_EQ(wall_of(tables(), utility), UtilityWall::unknown);
}

// What older files and records hold, and what they mean.
TEST(MaterialRows, WordsOfRecords_EnglishAndGerman) {
  const std::pair<const char*, const char*> texts[] = {{"DN 150 cast iron", "grey-iron"},
                                                       {"CI", "grey-iron"},
                                                       {"Grauguss", "grey-iron"},
                                                       {"Grauguß DN 100", "grey-iron"},
                                                       {"GG", "grey-iron"},
                                                       {"Gußeisen", "grey-iron"},
                                                       {"ductile iron", "ductile-iron"},
                                                       {"DI", "ductile-iron"},
                                                       {"duktiles Gusseisen", "ductile-iron"},
                                                       {"GGG 100", "ductile-iron"},
                                                       {"Sphäroguss", "ductile-iron"},
                                                       {"STEEL", "steel"},
                                                       {"Stahl", "steel"},
                                                       {"Stahlrohr PE-umhüllt", "steel"},
                                                       {"steel in a plastic coat", "steel"},
                                                       {"Stahlbeton", "reinforced-concrete"},
                                                       {"Spannbeton", "reinforced-concrete"},
                                                       {"precast trough", "reinforced-concrete"},
                                                       {"Beton", "concrete"},
                                                       {"concrete trough", "concrete"},
                                                       {"Asbestzement", "fibre-cement"},
                                                       {"AZ", "fibre-cement"},
                                                       {"Steinzeug DN 200", "clay"},
                                                       {"Stz", "clay"},
                                                       {"vitrified clay", "clay"},
                                                       {"Mauerwerk", "masonry"},
                                                       {"brick", "masonry"},
                                                       {"pe100", "polyethylene"},
                                                       {"PE-HD", "polyethylene"},
                                                       {"hdpe", "polyethylene"},
                                                       {"PVC-U", "pvc"},
                                                       {"Kunststoff", "plastic"},
                                                       {"GRP", "plastic"},
                                                       {"Kupfer", "copper"},
                                                       {"DIP", "ductile-iron"},
                                                       {"RCP 600", "reinforced-concrete"},
                                                       {"CIP", "grey-iron"},
                                                       {"SML", "grey-iron"},
                                                       {"CMP", "steel"},
                                                       {"copper", "copper"}};
  for (const auto& [text, id] : texts) EXPECT_EQ(row_of_text(text), id) << text;
}

// Copper is a pipe for what flows and a cable for what does not; nobody knows: a pipe, which has a limit.
TEST(MaterialRows, Copper_ByKind) {
  using enum UtilityKind;
  for (const UtilityKind kind : {gas, water, sewer, reclaimed, steam, oil, unknown}) {
    EXPECT_EQ(row_of_text("Kupfer", kind), "copper") << word_of(kind);
  }
  for (const UtilityKind kind : {power, telecom}) EXPECT_EQ(row_of_text("copper", kind), "conductor") << word_of(kind);
  EXPECT_EQ(row_of_text("Erdkabel", power), "cable");
  EXPECT_EQ(row_of_text("armoured", power), "cable");
  EXPECT_EQ(row_of_text("cable", unknown), "cable");
  // A gas main is no cable, whatever was typed or chosen.
  EXPECT_EQ(row_of_text("cable", gas), "");
  EXPECT_EQ(row_of_text("armoured", gas), "");
  EXPECT_EQ(row_of_text("conductor", water), "");
}

TEST(StructureRows, IdsWordsAndWholeEntries) {
  const auto limit = [](std::string_view text) -> std::string {
    const StructureRow* row = find_structure(tables(), text);
    return row ? row->limit : "";
  };
  for (const StructureRow& row : tables().structures) {
    EXPECT_EQ(limit(row.id), row.limit);
    EXPECT_EQ(limit(row.name.english()), row.limit);
    EXPECT_TRUE(find_limit(tables(), row.limit));
  }
  for (const char* text : {"dwelling", "Dwelling", " Wohnhaus ", "Wohngebäude", "HOUSE"})
    EXPECT_EQ(limit(text), "vibration_dwelling_m_s") << text;
  for (const char* text : {"industrial", "Lagerhalle", "Bürogebäude", "warehouse"})
    EXPECT_EQ(limit(text), "vibration_commercial_m_s") << text;
  for (const char* text : {"fragile", "Listed", "Baudenkmal", "chapel"})
    EXPECT_EQ(limit(text), "vibration_fragile_m_s") << text;
  // More than the word, or none that is known: nobody knows.
  for (const char* text : {"", "Listed chapel", "listed dwelling", "medieval house", "warehouse of 1740", "Scheune"})
    EXPECT_EQ(limit(text), "") << text;
}

}  // namespace
}  // namespace burrow::test
