#pragma once
/// The pipe: material, size, how it goes in; every check with how much of its limit is used and its working; what
/// presses on it, by depth and along the bore.

#include "burrow/document/pipe_fields.h"
#include "burrow/panels/form_panel.h"

class QComboBox;
class QPushButton;
class QSlider;

namespace burrow {

class CheckList;
class LoadAlongChart;
class LoadDepthChart;

class PipePanel : public FormPanel {
  Q_OBJECT

 public:
  explicit PipePanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;

  [[nodiscard]] QComboBox* materials() const { return materials_; }
  [[nodiscard]] QComboBox* sizes() const { return sizes_; }
  [[nodiscard]] QComboBox* walls() const { return walls_; }
  [[nodiscard]] EntryForm* size_entries() const { return size_; }
  [[nodiscard]] EntryForm* pull_entries() const { return pull_; }
  [[nodiscard]] EntryForm* use_entries() const { return use_; }
  [[nodiscard]] CheckList* checks() const { return checks_; }
  [[nodiscard]] QPushButton* copy() const { return copy_; }
  [[nodiscard]] QSlider* station() const { return station_; }
  [[nodiscard]] LoadDepthChart* by_depth() const { return by_depth_; }
  [[nodiscard]] LoadAlongChart* along() const { return along_; }
  /// The working of the picked check, and what is said about source and size, as plain text.
  [[nodiscard]] QString working() const;
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  void make_size();
  void make_pull();
  void make_checks();
  void make_charts();
  void edit(const QString& step_name, const std::function<void(Pipe&)>& change_it);
  void fill_materials();
  void fill_sizes();
  void fill_walls();
  void fill_temperatures();
  void choose_material(int row);
  void choose_size(int row);
  void choose_wall(int row);
  void show_checks();
  void show_working();
  void show_loads();
  [[nodiscard]] double station_m() const;
  [[nodiscard]] QString source_words() const;

  QComboBox *materials_ = nullptr, *sizes_ = nullptr, *walls_ = nullptr, *temperatures_ = nullptr, *service_ = nullptr;
  QLabel* source_ = nullptr;
  EntryForm *size_ = nullptr, *pull_ = nullptr, *use_ = nullptr;
  QLabel* summary_ = nullptr;
  CheckList* checks_ = nullptr;
  QLabel* working_ = nullptr;
  QPushButton* copy_ = nullptr;
  QSlider* station_ = nullptr;
  QLabel* station_text_ = nullptr;
  LoadDepthChart* by_depth_ = nullptr;
  LoadAlongChart* along_ = nullptr;
  std::string picked_;
  QString plain_;  ///< the working as it is copied
};

}  // namespace burrow
