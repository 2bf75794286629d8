#pragma once
/// Reading and cutting of foreign files off the screen's thread. One job at a time; a newer one stops the older, whose
/// answer is dropped.

#include <QObject>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include "burrow/import/into_crossing.h"

namespace burrow {

class ImportJob : public QObject {
  Q_OBJECT

 public:
  explicit ImportJob(QObject* parent = nullptr);
  /// Stops what runs and waits for it.
  ~ImportJob() override;

  /// `beside`: the first file of the picture the new one is to be seen in.
  void read(const std::string& path, const std::string& order, std::shared_ptr<const Found> beside);
  void cut(std::vector<ImportFile> files, const CrossingLine& line);
  void stop();
  [[nodiscard]] bool running() const { return running_; }

 Q_SIGNALS:
  void progressed(double share);
  /// `seen`: as the picture wants it, null where it wants it as it is.
  void read_done(std::shared_ptr<const burrow::Result<burrow::Found>> found, std::shared_ptr<const burrow::Found> seen);
  void cut_done(std::shared_ptr<const burrow::Result<burrow::Imported>> imported);

 private:
  using Tell = std::function<bool(double)>;
  struct Job {
    std::function<std::function<void()>(const Tell&)> run;  ///< gives what is then to be done on the screen's thread
    std::uint64_t number = 0;
    std::stop_token stop;
  };
  void begin(std::function<std::function<void()>(const Tell&)> run);
  void work(const std::stop_token& end);

  std::uint64_t newest_ = 0;
  bool running_ = false;
  std::stop_source stop_;
  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Job> waiting_;
  std::jthread worker_;  ///< last: ends before the rest goes
};

}  // namespace burrow
