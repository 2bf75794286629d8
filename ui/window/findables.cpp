/// What the find dialog offers: commands, pages, things of the crossing, findings, headings of the help.

#include <QMenu>
#include <QMenuBar>

#include "burrow/document/surroundings.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/window/help_window.h"
#include "burrow/window/main_window.h"

namespace burrow {

namespace {

QString plain(QString text) {
  return text.remove(QLatin1Char('&')).remove(QChar(0x2026));
}

/// Every command of a menu and of those below it that can be given now.
void add_commands(std::vector<Findable>& all, const QMenu& menu, const QString& where) {
  for (QAction* action : menu.actions()) {
    if (action->isSeparator()) continue;
    if (action->menu()) {
      add_commands(all, *action->menu(), where + QStringLiteral(" – ") + plain(action->menu()->title()));
    } else if (action->isEnabled()) {
      all.push_back({plain(action->text()), where, action->shortcut().toString(QKeySequence::NativeText),
                     [action] { action->trigger(); }});
    }
  }
}

}  // namespace

std::vector<Findable> MainWindow::findables() {
  fill_recent();
  std::vector<Findable> all;
  for (const QAction* menu : menuBar()->actions())
    if (menu->menu()) add_commands(all, *menu->menu(), plain(menu->menu()->title()));
  const auto add_item = [&](const ItemRef& part, const QString& kind) {
    all.push_back({text_from(part_name(document_.crossing(), part)), kind, {}, [this, part] {
                     drawing_->pick(part);
                     drawing_->show_picked();
                     drawing_->setFocus();
                   }});
  };
  add_item({ItemKind::launch, {}, -1}, tr("on the drawing"));
  add_item({ItemKind::exit, {}, -1}, tr("on the drawing"));
  for (const Utility& utility : document_.crossing().site.utilities)
    add_item({ItemKind::utility, utility.id, -1}, tr("utility"));
  for (const SurfaceFeature& feature : document_.crossing().site.surface)
    add_item({ItemKind::surface, feature.id, -1}, tr("above ground"));
  for (const TestHole& hole : document_.crossing().site.test_holes)
    add_item({ItemKind::test_holes, hole.id, -1}, tr("test hole"));
  for (const Around& one : surroundings(document_.crossing()))
    add_item({ItemKind::around, one.id, -1}, tr("beside the bore"));
  const std::vector<Finding>& found = document_.assessment().findings;
  for (std::size_t i = 0; i < found.size(); ++i)
    all.push_back({text_from(finding_text(found[i], units_)), tr("finding %1").arg(i + 1), {}, [this, i] {
                     side_->show_page(SideColumn::Page::findings);
                     findings().pick(static_cast<int>(i));
                     drawing_->go_to_finding(static_cast<int>(i));
                   }});
  for (const HelpPage& page : help_pages())
    for (const QString& line : page.text.split(QLatin1Char('\n')))
      if (line.startsWith(QLatin1String("## "))) {
        const QString heading = line.mid(3);
        all.push_back({heading, tr("help: %1").arg(page.title), {}, [this, heading] {
                         show_help();
                         help_->show_heading(heading);
                       }});
      }
  return all;
}

void MainWindow::show_find() {
  auto* dialog = new FindDialog(findables(), theme_now(), this);
  dialog->show();
}

}  // namespace burrow
