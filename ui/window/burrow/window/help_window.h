#pragma once
/// The help: pages of `resources/help`, searchable.

#include <QWidget>
#include <vector>

class QLineEdit;
class QListWidget;
class QTextBrowser;
class QTextDocument;

namespace burrow {

struct HelpPage {
  QString title;
  QString text;  ///< Markdown
};

/// All pages in reading order.
std::vector<HelpPage> help_pages();

class HelpWindow : public QWidget {
  Q_OBJECT

 public:
  explicit HelpWindow(QWidget* parent);
  /// The page with this heading, at it; unknown: as it is.   Evidence: HelpWindow.Heading_*
  void show_heading(const QString& heading);

 private:
  void filter(const QString& words);
  void show_page(int row);

  std::vector<HelpPage> pages_;
  std::vector<std::size_t> shown_;
  QLineEdit* search_;
  QListWidget* list_;
  QTextBrowser* text_;
  QTextDocument* page_ = nullptr;  ///< the one shown
};

}  // namespace burrow
