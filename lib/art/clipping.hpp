#pragma once
// What Clipper keeps to itself.

#include <polyclipping/clipper.hpp>

#include <new>

namespace lode {

// Clipper says no more than that it failed, which it also says where nothing was to be clipped. With outlines
// that it took, that is for want of memory; what it leaves then looks like a result and is none.
inline void need_done(ClipperLib::Clipper& clipper, bool executed) {
    if (executed) return;
    const ClipperLib::IntRect taken = clipper.GetBounds();
    if (taken.left != taken.right || taken.top != taken.bottom) throw std::bad_alloc();
}

}  // namespace lode
