#include "burrow/drawing/paint_apart.h"

#include <QSemaphore>
#include <QThread>
#include <QThreadPool>

namespace burrow {

void paint_apart(const std::function<void()>& paint) {
  QThreadPool* pool = QThreadPool::globalInstance();
  if (pool->maxThreadCount() < 1 || pool->contains(QThread::currentThread())) return paint();
  QSemaphore done;
  pool->start(
      [&] {
        paint();
        done.release();
      },
      1);
  done.acquire();
}

void paint_apart(const std::function<void()>& one, const std::function<void()>& other) {
  QThreadPool* pool = QThreadPool::globalInstance();
  if (pool->maxThreadCount() < 2 || pool->contains(QThread::currentThread())) {
    paint_apart([&] {
      one();
      other();
    });
    return;
  }
  QSemaphore done;
  for (const std::function<void()>* part : {&one, &other})
    pool->start(
        [&done, part] {
          (*part)();
          done.release();
        },
        1);
  done.acquire(2);
}

}  // namespace burrow
