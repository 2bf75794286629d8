/// The six questions of a new crossing.

#include <QButtonGroup>
#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QStackedWidget>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/window/guided_crossing.h"

namespace burrow {

namespace {

/// A word of the file as people write it: "traced-twice" is "traced twice".
QString dictionary(std::string_view word) {
  return text_from(translated(word)).replace(QLatin1Char('-'), QLatin1Char(' '));
}

}  // namespace

void GuidedCrossing::ask_what_is_crossed() {
  QFormLayout* form = crossed_form_ =
      ask(tr("What do you go under?"), tr("It stands in the middle between the pits; drag it later to where it is."));
  auto* name = new QLineEdit(this);
  name->setPlaceholderText(tr("New crossing"));
  connect(name, &QLineEdit::textEdited, this, [this](const QString& text) {
    answers_.name = text.trimmed().toStdString();
    catch_up();
  });
  form->addRow(tr("&Name of the crossing"), name);
  auto* kind = new QComboBox(this);
  kind->addItem(tr("nothing but ground"), -1);
  for (const auto& [k, word] : EnumNames<SurfaceKind>::list) kind->addItem(dictionary(word), static_cast<int>(k));
  kind->setCurrentIndex(kind->findData(static_cast<int>(*answers_.crossed)));
  form->addRow(tr("&What is crossed"), kind);
  form->addRow(tr("&How wide it is"),
               length_entry(tr("How wide it is"), answers_.crossed_width.m, Dimension::length, false,
                            [this](std::optional<double> v) { answers_.crossed_width = Length{*v}; }));
  rule_ = new QComboBox(this);
  form->addRow(tr("Owner's &rule"), rule_);
  auto* asked = new QComboBox(this);
  for (const auto& [p, word] : EnumNames<Permission>::list) asked->addItem(dictionary(word), static_cast<int>(p));
  asked->setCurrentIndex(asked->findData(static_cast<int>(answers_.permission)));
  form->addRow(tr("Owner's &permission"), asked);
  QLineEdit* permit = text_entry(tr("Permit"), TextKind::words, [this](const std::optional<std::string>& text) {
    answers_.permit = text.value_or(std::string());
  });
  permit->setPlaceholderText(tr("number, date, or who said so"));
  form->addRow(tr("Perm&it"), permit);
  of_crossed_ = {permit};
  ask_rescue(form);
  ask_nothing_above(form);
  connect(asked, &QComboBox::currentIndexChanged, this, [this, asked] {
    answers_.permission = static_cast<Permission>(asked->currentData().toInt());
    catch_up();
  });
  connect(rule_, &QComboBox::currentIndexChanged, this, [this] {
    answers_.rule = rule_->currentData().toString().toStdString();
    catch_up();
  });
  connect(kind, &QComboBox::currentIndexChanged, this, [this, kind] {
    const int k = kind->currentData().toInt();
    answers_.crossed = k < 0 ? std::optional<SurfaceKind>() : static_cast<SurfaceKind>(k);
    fill_rules();
    catch_up();
  });
  fill_rules();
}

void GuidedCrossing::ask_rescue(QFormLayout* form) {
  const auto add = [&](const QString& label, const QString& name, TextKind kind,
                       std::function<void(std::optional<std::string>)> take) {
    of_crossed_.push_back(text_entry(name, kind, std::move(take)));
    form->addRow(label, of_crossed_.back());
  };
  add(tr("A stuck &tool is got out"), tr("How a stuck tool is got out"), TextKind::words,
      [this](const std::optional<std::string>& text) { answers_.rescue.how = text.value_or(std::string()); });
  add(tr("A&greed with"), tr("With whom that is agreed"), TextKind::name,
      [this](const std::optional<std::string>& text) { answers_.rescue.agreed_with = text.value_or(std::string()); });
  add(tr("Agreed &on"), tr("Agreed on"), TextKind::day,
      [this](const std::optional<std::string>& text) { answers_.rescue.date = text; });
}

void GuidedCrossing::ask_nothing_above(QFormLayout* form) {
  const auto add = [&](const QString& label, const QString& name, TextKind kind,
                       std::function<void(std::optional<std::string>)> take) {
    of_nothing_.push_back(text_entry(name, kind, std::move(take)));
    form->addRow(label, of_nothing_.back());
  };
  add(tr("Nothing on top, sa&ys"), tr("Who says that nothing is on top"), TextKind::name,
      [this](const std::optional<std::string>& text) { answers_.nothing_above.by = text.value_or(std::string()); });
  add(tr("As &seen on"), tr("Nothing on top, as seen on"), TextKind::day,
      [this](const std::optional<std::string>& text) { answers_.nothing_above.date = text; });
}

void GuidedCrossing::fill_rules() {
  const QSignalBlocker blocker(rule_);
  rule_->clear();
  rule_->addItem(tr("not asked yet"), QString());
  for (const SurfaceRule& rule : tables_.surface_rules)
    if (answers_.crossed && rule.kind == *answers_.crossed) rule_->addItem(text_from(rule.name), text_from(rule.id));
  rule_->setEnabled(rule_->count() > 1);
  answers_.rule.clear();
}

void GuidedCrossing::ask_how_far() {
  QFormLayout* form =
      ask(tr("How far is it from pit to pit?"),
          tr("From the launch face to the exit face. The sheet and the check of the arrival hang on it."));
  form->addRow(tr("&Length of the bore"),
               length_entry(tr("Length of the bore"), answers_.length.m, Dimension::length, false,
                            [this](std::optional<double> v) { answers_.length = Length{*v}; }));
  form->addRow(tr("Ground at the exit &higher by"),
               length_entry(tr("Ground at the exit higher by"), answers_.rise.m, Dimension::length, false,
                            [this](std::optional<double> v) { answers_.rise = Length{*v}; }));
}

void GuidedCrossing::ask_ground() {
  QFormLayout* form =
      ask(tr("What is the ground?"),
          tr("Soft ground lets the tool sag, loose ground lets it climb. One layer will do to begin with."));
  auto* soil = new QComboBox(this);
  for (const SoilClass& s : tables_.soils) soil->addItem(text_from(s.name), text_from(s.id));
  soil->setCurrentIndex(soil->findData(text_from(answers_.soil)));
  form->addRow(tr("&Ground"), soil);
  thumb_ = new QLabel(this);
  thumb_->setWordWrap(true);
  form->addRow(tr("Sign by hand"), thumb_);
  auto* known = new QComboBox(this);
  for (const auto& [k, word] : EnumNames<StratumEvidence>::list) known->addItem(dictionary(word), static_cast<int>(k));
  known->setCurrentIndex(known->findData(static_cast<int>(answers_.known)));
  form->addRow(tr("How it is &known"), known);
  form->addRow(
      tr("&Water stands at, or none met down to"),
      length_entry(tr("Depth of the water"), std::nullopt, Dimension::length, true, [this](std::optional<double> v) {
        answers_.water_depth = v ? std::optional(Length{*v}) : std::nullopt;
      }));
  connect(soil, &QComboBox::currentIndexChanged, this, [this, soil] {
    answers_.soil = soil->currentData().toString().toStdString();
    catch_up();
  });
  connect(known, &QComboBox::currentIndexChanged, this, [this, known] {
    answers_.known = static_cast<StratumEvidence>(known->currentData().toInt());
    catch_up();
  });
}

void GuidedCrossing::ask_lines() {
  QFormLayout* form = ask(tr("Which lines are marked?"),
                          tr("Locate before digging. A depth that nobody knows is better left empty than guessed."));
  auto* done = new QCheckBox(tr("The locating &service was asked, and the lines are marked"), this);
  form->addRow(done);
  auto* reference = new QLineEdit(this);
  reference->setPlaceholderText(tr("number or date of the answer"));
  reference->setAccessibleName(tr("Reference"));
  form->addRow(tr("&Reference"), reference);
  ask_search(form);
  lines_ = new QWidget(this);
  new QVBoxLayout(lines_);
  lines_->layout()->setContentsMargins(0, 0, 0, 0);
  form->addRow(lines_);
  auto* add = new QPushButton(tr("&Add a line"), this);
  add->setAutoDefault(false);
  form->addRow(add);
  ask_exposed(form);
  auto* laterals = new QComboBox(this);
  for (const auto& [l, word] : EnumNames<Laterals>::list) laterals->addItem(dictionary(word), static_cast<int>(l));
  laterals->setCurrentIndex(laterals->findData(static_cast<int>(answers_.laterals)));
  form->addRow(tr("&House connections"), laterals);
  connect(done, &QCheckBox::toggled, this, [this](bool on) {
    answers_.searched = on;
    catch_up();
  });
  connect(reference, &QLineEdit::textEdited, this, [this](const QString& text) {
    answers_.reference = text.trimmed().toStdString();
    catch_up();
  });
  connect(laterals, &QComboBox::currentIndexChanged, this, [this, laterals] {
    answers_.laterals = static_cast<Laterals>(laterals->currentData().toInt());
    catch_up();
  });
  connect(add, &QPushButton::clicked, this, &GuidedCrossing::add_line);
  lines_form_ = form;
  show_lines();
}

void GuidedCrossing::ask_search(QFormLayout* form) {
  const auto add_day = [&](const QString& label, const QString& name,
                           std::optional<std::string> FirstAnswers::*member) {
    QLineEdit* entry = text_entry(name, TextKind::day,
                                  [this, member](const std::optional<std::string>& text) { answers_.*member = text; });
    form->addRow(label, entry);
    of_search_.push_back(entry);
  };
  add_day(tr("&Date of the answer"), tr("Date of the answer"), &FirstAnswers::search_date);
  add_day(tr("&Valid from"), tr("Valid from"), &FirstAnswers::valid_from);
  add_day(tr("Valid &to"), tr("Valid to"), &FirstAnswers::valid_to);
  auto* marks = new QComboBox(this);
  marks->setAccessibleName(tr("Marks on the ground"));
  marks->addItems({tr("not looked at"), tr("can be seen"), tr("cannot be seen")});
  form->addRow(tr("&Marks on the ground"), marks);
  of_search_.push_back(marks);
  connect(marks, &QComboBox::currentIndexChanged, this, [this](int row) {
    answers_.marks_visible = row > 0 ? std::optional<bool>(row == 1) : std::nullopt;
    catch_up();
  });
}

void GuidedCrossing::ask_exposed(QFormLayout* form) {
  QLineEdit* by =
      text_entry(tr("Exposed ones measured by"), TextKind::name,
                 [this](const std::optional<std::string>& t) { answers_.measured_by = t.value_or(std::string()); });
  QLineEdit* on = text_entry(tr("Exposed ones measured on"), TextKind::day,
                             [this](const std::optional<std::string>& t) { answers_.measured_on = t; });
  form->addRow(tr("&Exposed ones measured by"), by);
  form->addRow(tr("Measured &on"), on);
  of_exposed_ = {by, on};
}

void GuidedCrossing::add_line() {
  MarkedLine line;
  line.kind = UtilityKind::gas;
  line.along = Length{answers_.length.m * static_cast<double>(answers_.lines.size() + 1) / 6};
  if (answers_.lines.size() >= 5) line.along = Length{answers_.length.m / 2};
  answers_.lines.push_back(line);
  show_lines();
  catch_up();
}

void GuidedCrossing::show_lines() {
  // Entries that go take their faults along.
  for (QLineEdit* entry : lines_->findChildren<QLineEdit*>()) std::erase(wrong_, entry);
  delete lines_->findChild<QWidget*>(QStringLiteral("rows"));
  auto* rows = new QWidget(lines_);
  rows->setObjectName(QStringLiteral("rows"));
  auto* grid = new QGridLayout(rows);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(5);
  const QString heads[] = {tr("kind"), tr("crossed at"), tr("deep, crown"), tr("diameter"), tr("found by")};
  for (int c = 0; c < 5 && !answers_.lines.empty(); ++c) grid->addWidget(new QLabel(heads[c], rows), 0, c);
  if (answers_.lines.empty())
    grid->addWidget(
        new QLabel(tr("No line yet. Without any, and with the service asked, it counts as “none found”."), rows), 0, 0);
  for (std::size_t i = 0; i < answers_.lines.size(); ++i) {
    const MarkedLine& line = answers_.lines[i];
    const int row = static_cast<int>(i) + 1;
    auto* kind = new QComboBox(rows);
    for (const auto& [k, word] : EnumNames<UtilityKind>::list) kind->addItem(dictionary(word), static_cast<int>(k));
    kind->setCurrentIndex(kind->findData(static_cast<int>(line.kind)));
    kind->setAccessibleName(tr("Kind of line %1").arg(row));
    auto* how = new QComboBox(rows);
    for (const auto& [h, word] : EnumNames<LocatedHow>::list) how->addItem(dictionary(word), static_cast<int>(h));
    how->setCurrentIndex(how->findData(static_cast<int>(line.how)));
    how->setAccessibleName(tr("How line %1 was found").arg(row));
    connect(kind, &QComboBox::currentIndexChanged, this, [this, i, kind] {
      answers_.lines[i].kind = static_cast<UtilityKind>(kind->currentData().toInt());
      catch_up();
    });
    connect(how, &QComboBox::currentIndexChanged, this, [this, i, how] {
      answers_.lines[i].how = static_cast<LocatedHow>(how->currentData().toInt());
      catch_up();
    });
    const auto some = [](const std::optional<Length>& v) { return v ? std::optional(v->m) : std::nullopt; };
    const auto length = [](std::optional<double> v) { return v ? std::optional(Length{*v}) : std::nullopt; };
    auto* remove = new QPushButton(QStringLiteral("×"), rows);
    remove->setAutoDefault(false);
    remove->setFixedWidth(remove->sizeHint().height());
    remove->setAccessibleName(tr("Remove line %1").arg(row));
    remove->setToolTip(tr("Remove this line"));
    connect(remove, &QPushButton::clicked, this, [this, i] {
      answers_.lines.erase(answers_.lines.begin() + static_cast<std::ptrdiff_t>(i));
      // Not while the button is still being clicked.
      QMetaObject::invokeMethod(
          this,
          [this] {
            show_lines();
            catch_up();
          },
          Qt::QueuedConnection);
    });
    grid->addWidget(kind, row, 0);
    grid->addWidget(length_entry(tr("Line %1 crossed at").arg(row), line.along.m, Dimension::station, false,
                                 [this, i](std::optional<double> v) { answers_.lines[i].along = Length{*v}; }),
                    row, 1);
    grid->addWidget(length_entry(tr("Depth of line %1").arg(row), some(line.depth), Dimension::length, true,
                                 [this, i, length](std::optional<double> v) { answers_.lines[i].depth = length(v); }),
                    row, 2);
    grid->addWidget(
        length_entry(tr("Diameter of line %1").arg(row), some(line.outside_diameter), Dimension::small_length, true,
                     [this, i, length](std::optional<double> v) { answers_.lines[i].outside_diameter = length(v); }),
        row, 3);
    grid->addWidget(how, row, 4);
    grid->addWidget(remove, row, 5);
  }
  lines_->layout()->addWidget(rows);
  rows->show();
}

void GuidedCrossing::ask_pipe() {
  QFormLayout* form =
      ask(tr("Which pipe goes in?"), tr("The hole is to be some 15 % wider than the pipe; the tool makes the hole."));
  auto* pipe = new QComboBox(this);
  pipe->addItem(tr("not decided"));
  const std::string_view series_id = units_ == UnitSystem::us ? "pe-ips" : "pe-metric";
  int chosen = 0;
  for (const PipeSeries& series : tables_.pipe_sizes) {
    if (series.id != series_id || series.materials.empty()) continue;
    answers_.material = series.materials.front();
    for (const PipeSize& size : series.sizes) {
      const bool eleven =
          std::any_of(size.walls.begin(), size.walls.end(), [](const PipeWall& w) { return w.sdr && w.sdr->v == 11; });
      if (!eleven || size.outside_diameter.m > 0.17) continue;
      pipe->addItem(tr("polyethylene %1, SDR 11").arg(text_from(size.name)), size.outside_diameter.m);
      if (size.outside_diameter.m <= answers_.pipe_diameter->m + 1e-9) chosen = pipe->count() - 1;
    }
  }
  pipe->setMaxVisibleItems(16);
  form->addRow(tr("&Pipe"), pipe);
  auto* tool = new QComboBox(this);
  tool->addItem(own_ ? tr("your own") : tr("the smallest that leaves room"), QString());
  for (const ToolClass& t : tables_.tools)
    tool->addItem(tr("tool of %1").arg(text_from(format(t.diameter, units_, Dimension::small_length))),
                  text_from(t.id));
  form->addRow(tr("&Tool"), tool);
  connect(pipe, &QComboBox::currentIndexChanged, this, [this, pipe] {
    const QVariant size = pipe->currentData();
    answers_.pipe_diameter = size.isValid() ? std::optional(Length{size.toDouble()}) : std::nullopt;
    catch_up();
  });
  connect(tool, &QComboBox::currentIndexChanged, this, [this, tool] {
    answers_.tool = tool->currentData().toString().toStdString();
    catch_up();
  });
  pipe->setCurrentIndex(chosen);
}

void GuidedCrossing::ask_depth() {
  QFormLayout* form = ask(tr("How deep at the launch?"),
                          tr("The program looks through depths and grades for the launch whose worst margin is best."));
  auto* ways = new QButtonGroup(this);
  auto* proposed = new QRadioButton(tr("as the program &proposes"), this);
  auto* typed = new QRadioButton(tr("as I &say"), this);
  ways->addButton(proposed);
  ways->addButton(typed);
  proposed->setChecked(true);
  proposal_ = new QLabel(this);
  proposal_->setWordWrap(true);
  form->addRow(proposed);
  form->addRow(proposal_);
  form->addRow(typed);
  depth_ =
      length_entry(tr("Depth of the axis"), std::nullopt, Dimension::length, true,
                   [this](std::optional<double> v) { answers_.depth = v ? std::optional(Length{*v}) : std::nullopt; });
  depth_->setPlaceholderText(tr("owner's cover or ten diameters"));
  depth_->setEnabled(false);
  form->addRow(tr("&Depth of the axis below the ground"), depth_);
  connect(proposed, &QRadioButton::toggled, this, [this](bool on) {
    propose_ = on;
    depth_->setEnabled(!on);
    catch_up();
    if (!on) depth_->setFocus();
  });
}

}  // namespace burrow
