#pragma once
/// Painting on a thread of Qt's own pool, while the caller waits. The raster engine hands every batch of some hundred
/// translucent runs to that pool and waits for each, which took three fifths of a frame with 60 utilities; on a thread
/// of the pool it does not. Source: measured (ui_paint_bench), and Qt's qdrawhelper.cpp, from memory.

#include <functional>

namespace burrow {

/// What paints there must not touch widgets.
void paint_apart(const std::function<void()>& paint);

/// Two parts that share nothing they change.
void paint_apart(const std::function<void()>& one, const std::function<void()>& other);

}  // namespace burrow
