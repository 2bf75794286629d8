#pragma once
/// The words of the trade, explained where they stand: the page “Words” of the help, looked up by a label's text.

#include <QString>
#include <vector>

namespace burrow {

struct Term {
  QString title;                 ///< "Standard deviation (sd)"
  std::vector<QString> spelt{};  ///< "standard deviation", "sd"
  QString means;
};

/// The page in the language spoken.
const std::vector<Term>& glossary();

/// What a text says in words of the trade, as rich text for a tip: its longest terms first, two at most; empty where it
/// has none. "grade, up positive" is "**Grade** – rise over run, …".   Evidence: Glossary.*
QString explained(const QString& text);

/// From now on every label, button, tick and box title of the program that has no tip of its own explains the words of
/// the trade in it. Installed once for all windows.
void explain_words();

}  // namespace burrow
