// Everything by keyboard and by ear: names, focus, the order of Tab, shortcuts, on every page and in every window of
// the program. WCAG 2.1, 2.1.1 keyboard, 2.4.3 focus order, 2.4.7 focus visible, 4.1.2 name (success criteria, from
// memory).

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QScrollArea>
#include <QScrollBar>
#include <QShortcut>
#include <QSlider>
#include <QTemporaryDir>
#include <QTest>
#include <QTextBrowser>
#include <QToolButton>
#include <map>
#include <set>
#include <vector>

#include "burrow/window/guided_crossing.h"
#include "burrow/window/help_window.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/page_bar.h"
#include "burrow/window/settings_dialog.h"
#include "support/menus_for_tests.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// What a person acts on: controls of the program, not the parts that Qt builds into them.
bool acts(const QWidget& w) {
  if (qobject_cast<const QScrollBar*>(&w)) return false;
  const QWidget* parent = w.parentWidget();
  if (qobject_cast<const QComboBox*>(parent) || qobject_cast<const QAbstractSpinBox*>(parent) ||
      qobject_cast<const QLineEdit*>(parent) || qobject_cast<const QAbstractItemView*>(parent))
    return false;
  if (parent && qobject_cast<const QAbstractItemView*>(parent->parentWidget())) return false;
  if (const auto* area = qobject_cast<const QAbstractScrollArea*>(parent); area && area->viewport() == &w) return false;
  return qobject_cast<const QAbstractButton*>(&w) || qobject_cast<const QLineEdit*>(&w) ||
         qobject_cast<const QComboBox*>(&w) || qobject_cast<const QAbstractSlider*>(&w) ||
         qobject_cast<const QAbstractSpinBox*>(&w) || qobject_cast<const QAbstractItemView*>(&w) ||
         w.focusPolicy() == Qt::StrongFocus;
}

QString spoken_name(const QWidget& root, const QWidget& w) {
  if (!w.accessibleName().isEmpty()) return w.accessibleName();
  if (const auto* button = qobject_cast<const QAbstractButton*>(&w); button && !button->text().isEmpty())
    return button->text();
  for (const QLabel* label : root.findChildren<QLabel*>())
    if (label->buddy() == &w) return label->text();
  for (const QFormLayout* form : root.findChildren<QFormLayout*>())
    if (const QWidget* label = form->labelForField(const_cast<QWidget*>(&w)))
      if (const auto* text = qobject_cast<const QLabel*>(label)) return text->text();
  return {};
}

std::string which(const QWidget& w, const QString& where) {
  const QPoint at = w.mapTo(w.window(), QPoint(0, 0));
  return QStringLiteral("%1: %2 “%3” of %4 at %5, %6")
      .arg(where, QLatin1String(w.metaObject()->className()), w.objectName(),
           QLatin1String(w.parentWidget() ? w.parentWidget()->metaObject()->className() : "none"))
      .arg(at.x())
      .arg(at.y())
      .toStdString();
}

std::vector<QWidget*> controls_of(QWidget& root) {
  std::vector<QWidget*> all;
  for (QWidget* w : root.findChildren<QWidget*>())
    if (w->isVisibleTo(&root) && acts(*w)) all.push_back(w);
  return all;
}

/// Where Tab leads, pressed until it is back where it began.
std::vector<QWidget*> by_tab(QWidget& window) {
  std::vector<QWidget*> way;
  window.activateWindow();
  window.setFocus();
  for (int i = 0; i < 2000; ++i) {
    QWidget* at = window.focusWidget() ? window.focusWidget() : &window;
    QTest::keyClick(at, Qt::Key_Tab);
    at = window.focusWidget();
    if (!at || (!way.empty() && at == way.front())) break;
    if (!way.empty() && at == way.back()) continue;  // a text with links goes through them first
    if (std::find(way.begin(), way.end(), at) != way.end()) {
      ADD_FAILURE() << which(*at, QStringLiteral("Tab")) << " comes a second time before the first";
      break;
    }
    way.push_back(at);
  }
  return way;
}

/// The contents of the scrolling page it stands in; none: it does not scroll.
const QWidget* scrolled_with(const QWidget& w) {
  for (const QWidget* up = &w; up; up = up->parentWidget())
    if (const QWidget* parent = up->parentWidget())
      if (const auto* area = qobject_cast<const QScrollArea*>(parent->parentWidget()); area && area->widget() == up)
        return up;
  return nullptr;
}

/// Names; that Tab comes to each control that is enabled; that it goes down, and within a row to the right.
void expect_reachable(QWidget& root, QWidget& page, const QString& where) {
  // What comes to be by the way, as tools for what Tab selected, may lie behind.
  const std::vector<QWidget*> controls = controls_of(root);
  std::set<const QWidget*> enabled;
  for (const QWidget* w : controls)
    if (w->isEnabled()) enabled.insert(w);
  const std::vector<QWidget*> way = by_tab(root);
  for (QWidget* w : controls) {
    EXPECT_FALSE(spoken_name(root, *w).trimmed().isEmpty()) << which(*w, where) << " has no name";
    const bool of_group = qobject_cast<QRadioButton*>(w) != nullptr;  // Tab to one of them, arrows between them
    const bool of_pages = qobject_cast<PageBar*>(w->parentWidget()) || qobject_cast<PageRail*>(w->parentWidget());
    if (!w->isEnabled() || !enabled.count(w) || of_group || of_pages) continue;
    EXPECT_TRUE(std::find(way.begin(), way.end(), w) != way.end()) << which(*w, where) << " is not reached by Tab";
  }
  const QWidget* before = nullptr;
  for (const QWidget* at : way) {
    if (!page.isAncestorOf(at) || !acts(*at)) continue;
    // What scrolls is compared with what scrolls along with it, all else with what stands in the same box.
    if (before && (before->parentWidget() == at->parentWidget() ||
                   (scrolled_with(*before) && scrolled_with(*before) == scrolled_with(*at)))) {
      const QRect last(before->mapTo(&page, QPoint(0, 0)), before->size());
      const QRect now(at->mapTo(&page, QPoint(0, 0)), at->size());
      EXPECT_GT(now.bottom(), last.top())
          << which(*at, where) << " comes after what stands below it:\n  " << which(*before, where);
      if (std::abs(now.center().y() - last.center().y()) < 6) {
        EXPECT_GT(now.left(), last.left()) << which(*at, where) << " comes after what stands right of it";
      }
    }
    before = at;
  }
}

TEST(Access, Pages_NamesTabAndOrder) {
  for (const char* sample : {"house-service", "four-faults", "first-lesson"}) {
    TestWindow w(sample);
    ASSERT_TRUE(w.opened);
    for (int page = 0; page < w.window.side().count(); ++page) {
      w.window.side().show_page(static_cast<SideColumn::Page>(page));
      settle(w.window);
      const QString where = QStringLiteral("%1, page %2").arg(QLatin1String(sample)).arg(page);
      expect_reachable(w.window, w.window.side(), where);
    }
  }
}

TEST(Access, Dialogs_NamesTabAndOrder) {
  TestWindow w("house-service");
  const QTemporaryDir folder;
  const CrewDefaults own(folder.path(), tables_for_tests());
  ASSERT_TRUE(own.keep(w.crossing()));
  SettingsDialog settings({}, own, w.crossing(), &w.window);
  settings.show();
  expect_reachable(settings, settings, QStringLiteral("settings"));
  settings.hide();
  GuidedCrossing guide(tables_for_tests(), Theme::light(), UnitSystem::metric, std::nullopt, &w.window);
  guide.show();
  for (int question = 0; question < 6; ++question) {
    guide.go_to(question);
    expect_reachable(guide, guide, QStringLiteral("question %1").arg(question + 1));
  }
  guide.hide();
  HelpWindow help(nullptr);
  help.show();
  expect_reachable(help, help, QStringLiteral("help"));
  ImportScreen import(tables_for_tests(), Theme::light(), UnitSystem::metric, QString(), &w.window);
  import.show();
  expect_reachable(import, import, QStringLiteral("import"));
}

TEST(Access, Shortcuts_AreUniqueAndInTheHelp) {
  TestWindow w("house-service");
  QString help;
  for (const HelpPage& page : help_pages()) help += page.text;
  std::map<QString, QString> taken;
  int seen = 0;
  for (const QAction* action : w.window.findChildren<QAction*>())
    for (const QKeySequence& keys : action->shortcuts()) {
      if (keys.isEmpty()) continue;
      ++seen;
      const QString text = keys.toString(QKeySequence::PortableText);
      const auto [it, fresh] = taken.emplace(text, action->text());
      EXPECT_TRUE(fresh) << text.toStdString() << " is both " << it->second.toStdString() << " and "
                         << action->text().toStdString();
      static const QRegularExpression row_of_pages(QStringLiteral("^Ctrl\\+(Alt\\+)?[1-9]$"));
      if (row_of_pages.match(text).hasMatch()) continue;  // "Ctrl+1 to Ctrl+9 open the first nine"
      const QString shown = text == QLatin1String("Del") ? QStringLiteral("Delete") : text;
      EXPECT_TRUE(help.contains(shown)) << text.toStdString() << " (" << action->text().toStdString()
                                        << ") is not in the help";
    }
  EXPECT_GT(seen, 20);
}

TEST(Access, Menus_EveryLetterOnce) {
  TestWindow w("house-service");
  expect_letters_once(w.window);
}

/// Shown alone, with and without the keyboard.
bool focus_shows(QWidget& w) {
  QWidget box;
  QLineEdit other(&box);
  w.setParent(&box);
  other.setGeometry(10, 10, 120, 28);
  w.setGeometry(10, 60, 160, 60);
  box.resize(200, 140);
  box.show();
  box.activateWindow();
  other.setFocus();
  settle(box);
  const QImage without = w.grab().toImage();
  QTest::keyClick(&other, Qt::Key_Tab);
  settle(box);
  if (!w.hasFocus()) return false;
  const QImage with = w.grab().toImage();
  w.setParent(nullptr);
  return with != without;
}

TEST(Access, Focus_IsSeen) {
  TestWindow w("house-service");
  for (const bool dark : {false, true}) {
    w.window.set_dark(dark);
    QPushButton button(QStringLiteral("Press"));
    QToolButton tool;
    tool.setText(QStringLiteral("Tool"));
    tool.setFocusPolicy(Qt::StrongFocus);
    QLineEdit entry;
    QComboBox choice;
    choice.addItem(QStringLiteral("one"));
    QCheckBox tick(QStringLiteral("Tick"));
    QSlider slider(Qt::Horizontal);
    for (QWidget* control : std::initializer_list<QWidget*>{&button, &tool, &choice, &tick, &slider, &entry})
      EXPECT_TRUE(focus_shows(*control)) << control->metaObject()->className() << (dark ? " dark" : " light");
    // The drawing in the window itself.
    w.window.activateWindow();
    w.window.drawing().setFocus(Qt::TabFocusReason);
    settle(w.window);
    const QImage with = w.window.grab().toImage();
    QTest::keyClick(w.window.focusWidget(), Qt::Key_Tab);
    settle(w.window);
    EXPECT_NE(with, w.window.grab().toImage());
  }
}

}  // namespace
}  // namespace burrow
