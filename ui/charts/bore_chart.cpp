#include <QChart>
#include <QChartView>
#include <QGraphicsLayout>
#include <QLegend>
#include <QLocale>
#include <QVBoxLayout>
#include <QValueAxis>

#include "burrow/base/decimal_mark.h"
#include "burrow/charts/bore_charts.h"

namespace burrow {

BoreChart::BoreChart(const QString& title, QWidget* parent)
    : QWidget(parent), view_(new QChartView(this)), chart_(view_->chart()) {
  setLayoutDirection(Qt::LeftToRight);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(view_);
  chart()->setTitle(title);
  chart()->setAnimationOptions(QChart::NoAnimation);
  QLocale numbers = decimal_mark() == DecimalMark::comma ? QLocale(QLocale::German) : QLocale::c();
  numbers.setNumberOptions(QLocale::OmitGroupSeparator);
  chart()->setLocale(numbers);
  chart()->setLocalizeNumbers(true);
  chart()->setMargins(QMargins(2, 2, 6, 2));
  chart()->setBackgroundRoundness(0);
  chart()->legend()->setVisible(false);
  chart()->layout()->setContentsMargins(0, 0, 0, 0);
  view_->setFrameShape(QFrame::NoFrame);
  view_->setRenderHint(QPainter::Antialiasing);
  view_->setRubberBand(QChartView::NoRubberBand);
  view_->setFocusPolicy(Qt::NoFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(title);
}

QSize BoreChart::sizeHint() const {
  return {300, fontMetrics().height() * 13};
}

void BoreChart::set_heading(const QString& text) {
  chart()->setTitle(text);
  setAccessibleName(text);
}

void BoreChart::set_theme(const Theme& theme) {
  theme_ = theme;
  dress();
}

void BoreChart::dress() {
  const double text = fontMetrics().height() * 0.66;
  chart()->setBackgroundBrush(theme_.field);
  chart()->setBackgroundPen(Qt::NoPen);
  chart()->setTitleBrush(theme_.ink);
  chart()->setTitleFont(drawing_font(text * 1.08, QFont::DemiBold));
  view_->setBackgroundBrush(theme_.panel);
  for (QAbstractAxis* axis : chart()->axes()) {
    axis->setLabelsBrush(theme_.ink);
    axis->setLabelsFont(drawing_font(text * 0.95));
    axis->setTitleBrush(theme_.ink_soft);
    axis->setTitleFont(drawing_font(text * 0.95));
    axis->setGridLinePen(QPen(theme_.grid, 1));
    axis->setLinePen(QPen(theme_.ink_soft, 1));
  }
}

}  // namespace burrow
