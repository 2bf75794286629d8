#pragma once
/// Reading and cutting of foreign files off the screen's thread. One job at a time; a newer one stops the older, whose
/// answer is dropped.

#include <QObject>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "burrow/document/latest_job.h"
#include "burrow/import/into_crossing.h"

namespace burrow {

class ImportJob : public QObject {
  Q_OBJECT

 public:
  explicit ImportJob(QObject* parent = nullptr);

  /// How the person said it is to be read.
  struct Manner {
    std::string order;             ///< of a survey's columns
    std::optional<FileUnit> unit;  ///< of a drawing
  };
  /// `beside`: the first file of the picture the new one is to be seen in.
  void read(const std::string& path, const Manner& manner, std::shared_ptr<const Found> beside);
  void cut(std::vector<ImportFile> files, const CrossingLine& line);
  /// Where the files lie in the picture of the first one.
  void see(std::vector<ImportFile> files);
  void stop() { job_.cancel(); }
  [[nodiscard]] bool running() const { return job_.running() || seeing_.running(); }

 Q_SIGNALS:
  void progressed(double share);
  /// `seen`: as the picture wants it, null where it wants it as it is.
  void read_done(std::shared_ptr<const burrow::Result<burrow::Found>> found, std::shared_ptr<const burrow::Found> seen);
  void cut_done(std::shared_ptr<const burrow::Result<burrow::Imported>> imported);
  /// For each file asked about, what was found in it and what of it is seen; null where it is drawn as it is.
  void seen_done(
      std::vector<std::pair<std::shared_ptr<const burrow::Found>, std::shared_ptr<const burrow::Found>>> seen);

 private:
  LatestJob job_;
  LatestJob seeing_;
};

}  // namespace burrow
