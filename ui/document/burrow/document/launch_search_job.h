#pragma once
/// The search for a launch beside the open crossing, off the screen's thread: a coarse map first, then the full one.
/// The newest request wins; an answer to an older one is dropped. What was found stays until it is found anew, and says
/// whether it still fits the crossing.

#include <QObject>
#include <QTimer>
#include <memory>
#include <optional>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/document/latest_job.h"
#include "burrow/search/launch_choice.h"
#include "burrow/search/launch_map.h"

namespace burrow {

class LaunchSearchJob : public QObject {
  Q_OBJECT

 public:
  explicit LaunchSearchJob(Document& document, QObject* parent = nullptr);

  /// Whether somebody looks: then it searches now and after each change, once nothing has moved for a moment.
  void set_wanted(bool wanted);
  /// Searches the crossing as it stands, in place of what is under way.
  void run();
  void cancel();
  [[nodiscard]] bool running() const { return job_.running(); }
  [[nodiscard]] double progress() const { return job_.progress(); }

  [[nodiscard]] MapOver over() const { return over_; }
  void set_over(MapOver over);

  /// The last map finished, null before the first.
  [[nodiscard]] const std::shared_ptr<const LaunchMap>& map() const { return map_; }
  /// The crossing that it is of.
  [[nodiscard]] const Crossing& searched() const { return searched_; }
  [[nodiscard]] const std::vector<Exposure>& exposures() const { return exposures_; }
  /// Whether the map is of the crossing as it stands; where its launch lies on the map does not matter.
  [[nodiscard]] bool current() const { return current_; }
  /// The full map follows.
  [[nodiscard]] bool coarse() const { return coarse_; }
  /// Launches along each side of the full map, from the next search on.
  [[nodiscard]] int full_cells() const { return full_cells_; }
  void set_full_cells(int cells) { full_cells_ = cells; }

  /// The same question over tools and ways of putting the pipe in; takes longer, so only when asked.
  void ask_tools();
  [[nodiscard]] bool tools_running() const { return running() && asked_tools_; }
  [[nodiscard]] const std::vector<ToolRow>* tools() const { return tools_ ? &*tools_ : nullptr; }
  [[nodiscard]] bool tools_current() const;

 Q_SIGNALS:
  /// Started, coarse or full map there, cancelled, or no longer current.
  void changed();
  void progressed(double share);

 private:
  struct Request {
    Crossing crossing;
    MapOver over = MapOver::depth_and_grade;
    int full_cells = 64;
  };
  LatestJob::OnScreen search(const Request& request, const LatestJob::Work& work);
  LatestJob::OnScreen choose(const Crossing& crossing, const LatestJob::Work& work);
  void show(LaunchMap map, std::vector<Exposure> exposures, Crossing crossing, bool coarse);
  void crossing_changed();
  [[nodiscard]] bool fits() const;

  Document& document_;
  Tables tables_;  ///< the worker's own
  MapOver over_ = MapOver::depth_and_grade;
  std::shared_ptr<const LaunchMap> map_;
  std::vector<Exposure> exposures_;
  Crossing searched_, tools_of_;
  std::optional<std::vector<ToolRow>> tools_;
  bool wanted_ = false, current_ = false, coarse_ = false, asked_tools_ = false;
  int full_cells_ = 64;
  QTimer settle_;
  LatestJob job_;  ///< last: ends before the rest goes
};

}  // namespace burrow
