#pragma once
// What stands behind the opaque handles of letterlode_art.h.

#include <memory>
#include <string>
#include <vector>

#include <letterlode/letterlode_art.h>
#include <letterlode/cut.hpp>
#include <letterlode/files.hpp>
#include <letterlode/print.hpp>

#include "c/error.hpp"
#include "c/lent.hpp"
#include "c/list.hpp"

struct lode_bytes {
    std::string bytes;
};

struct lode_files {
    std::vector<lode::NamedFile> files;
};

struct lode_artwork_options {
    lode::ArtworkOptions options;
};

namespace lode::c {

// Artwork with all that is said of it; its plans share it.
struct Drawn {
    Puzzle puzzle;
    HeldArtwork held;
    bool is_measured = false;
    std::vector<std::string> colours;   // of the layers
    std::vector<std::string> findings;  // in words
    std::vector<std::string> ways_out;
};

}  // namespace lode::c

struct lode_artwork {
    std::shared_ptr<const lode::c::Drawn> drawn;
};

struct lode_cut_options {
    lode::CutOptions options;     // without those of a plan
    lode::PlanOptions plan;       // of use once there is a bed
    const char* waits = nullptr;  // the first option that was set and is of no use without a bed
};

struct lode_plan {
    std::shared_ptr<const lode::c::Drawn> drawn;
    lode::PlanOptions options;
    lode::CutPlan plan;
    bool weeding_lines = false;
};

struct lode_print_options {
    lode::PrintOptions options;
};

struct lode_worksheets {
    std::vector<lode::Worksheet> worksheets;
};

struct lode_pages {
    lode_bytes pdf;
    lode::PrintedPages pages;  // its bytes are those above
    std::string json;
};

namespace lode::c {

// A new handle that holds a copy of another's.
template <class Handle>
std::int32_t give_copy(const char* function, Handle** copy, const Handle* options, lode_error** error) {
    clear(copy);
    return guarded(function, error, [&] {
        auto& result = need(copy, "copy");
        result = new Handle(need(options, "options"));
        return LODE_OK;
    });
}

// A new handle with nothing set.
template <class Handle>
std::int32_t give_new(const char* function, Handle** handle, const char* name, lode_error** error) {
    clear(handle);
    return guarded(function, error, [&] {
        auto& result = need(handle, name);
        result = new Handle;
        return LODE_OK;
    });
}

// A setter works on what it was given first and writes to the options last, so that a failure changes
// nothing.
template <class Handle, class Change>
std::int32_t changed(const char* function, Handle* options, lode_error** error, const Change& change) {
    return guarded(function, error, [&] {
        change(need(options, "options"));
        return LODE_OK;
    });
}

// New bytes of what write() gives.
template <class Write>
std::int32_t give_bytes(const char* function, lode_bytes** bytes, const char* name, lode_error** error,
                        const Write& write) {
    clear(bytes);
    return guarded(function, error, [&] {
        auto& result = need(bytes, name);
        result = new lode_bytes{write()};
        return LODE_OK;
    });
}

// Hands out what was made, or the refusal.
template <class T, class Handle>
std::int32_t give_outcome(Outcome<T> outcome, lode_refusal*& refusal, const Handle& handle) {
    if (outcome) {
        handle(std::move(outcome).value());
        return LODE_OK;
    }
    refusal = new_handle(outcome.refusal());
    return LODE_REFUSED;
}

inline CutControl cut_control_of(const lode_control* control) {
    MakeControl made = control_of(control);
    return {std::move(made.progress), made.cancel};
}

}  // namespace lode::c
