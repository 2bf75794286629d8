#pragma once
/// Menus: their entries by name, their letters in whatever language.

#include <gtest/gtest.h>

#include <QAction>
#include <QMenu>
#include <map>

namespace burrow {

/// The letter after "&" chooses one entry of a menu, not two.
inline void expect_letters_once(const QWidget& window) {
  for (const QMenu* menu : window.findChildren<QMenu*>()) {
    std::map<QChar, QString> letters;
    for (const QAction* action : menu->actions()) {
      const qsizetype at = action->text().indexOf(QLatin1Char('&'));
      if (at < 0 || at + 1 >= action->text().size() || action->isSeparator()) continue;
      const auto [it, fresh] = letters.emplace(action->text()[at + 1].toLower(), action->text());
      EXPECT_TRUE(fresh) << menu->title().toStdString() << ": " << it->second.toStdString() << " and "
                         << action->text().toStdString();
    }
  }
}

/// By menu and name, without the "&".
inline QAction* entry(const QWidget& window, const QString& menu, const QString& name) {
  for (QMenu* m : window.findChildren<QMenu*>()) {
    if (m->title().remove(QLatin1Char('&')) != menu) continue;
    for (QAction* action : m->actions())
      if (action->text().remove(QLatin1Char('&')) == name) return action;
  }
  ADD_FAILURE() << "no entry " << name.toStdString();
  return nullptr;
}

}  // namespace burrow
