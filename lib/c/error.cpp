#include "c/error.hpp"

#include <new>

#include <letterlode/files.hpp>
#include <letterlode/text.hpp>

#include "c/list.hpp"
#include "text/utf8.hpp"

namespace lode::c {
namespace {

// Handed out where there is no memory for another; its message is short enough to be held without any.
lode_error& out_of_memory() noexcept {
    static lode_error error{LODE_OUT_OF_MEMORY, {Refusal::Reason::unusable, "memory ran out", {}, {}, {}, 0}};
    return error;
}

std::int32_t give(lode_error** error, std::int32_t code, Refusal what) {
    if (error) *error = new lode_error{code, std::move(what)};
    return code;
}

std::int32_t give(lode_error** error, std::int32_t code, const char* function, const std::string& what) {
    return give(error, code,
                {Refusal::Reason::unusable, std::string(function) + ": " + what + ".", {}, {}, {}, 0});
}

std::int32_t reported(const char* function, lode_error** error) {
    try {
        throw;
    } catch (const Unusable& unusable) {
        // A search is unfinished where its caller cancelled it, and for no other reason.
        const bool cancelled = unusable.refusal.reason == Refusal::Reason::unfinished;
        return give(error, cancelled ? LODE_CANCELLED : LODE_UNUSABLE, unusable.refusal);
    } catch (const BrokenCall& broken) {
        return give(error, LODE_BROKEN_CALL, function, broken.what());
    } catch (const std::bad_alloc&) {
        throw;
    } catch (const std::length_error& too_long) {
        return give(error, LODE_UNUSABLE, function, std::string("too much: ") + too_long.what());
    } catch (const DiskFault& fault) {
        return give(error, LODE_DISK_FAULT, function, fault.what());
    } catch (const std::exception& fault) {
        return give(error, LODE_FAULT, function, fault.what());
    } catch (...) {
        return give(error, LODE_FAULT, function, "something unknown was thrown");
    }
}

}  // namespace

std::int32_t report(const char* function, lode_error** error) noexcept {
    try {
        return reported(function, error);
    } catch (...) {
        // Memory ran out in the call, or while its error was written.
        if (error) *error = &out_of_memory();
        return LODE_OUT_OF_MEMORY;
    }
}

std::string_view text(const char* given, const char* name) {
    return &need(given, name);
}

std::string word(const char* given, const char* name) {
    auto text = normalised(&need(given, name));
    if (!text)
        throw Unusable{{Refusal::Reason::unusable,
                        std::string("The ") + name + " is no UTF-8 text.",
                        {},
                        {"Convert it to UTF-8."},
                        {},
                        0}};
    return std::move(*text);
}

std::string source_name(const char* given) {
    return given ? to_utf8(to_icu(given)) : std::string();
}

}  // namespace lode::c

using namespace lode::c;

std::int32_t lode_error_code(const lode_error* error) {
    return error ? error->code : LODE_OK;
}

const char* lode_error_message(const lode_error* error) {
    return error ? error->what.message.c_str() : nullptr;
}

const char* lode_error_source(const lode_error* error) {
    return error ? error->what.source.c_str() : nullptr;
}

std::int32_t lode_error_line(const lode_error* error) {
    return error ? error->what.line : 0;
}

std::int32_t lode_error_position(const lode_error* error) {
    return error ? error->what.position : 0;
}

std::size_t lode_error_word_count(const lode_error* error) {
    return error ? error->what.words.size() : 0;
}

const char* lode_error_word(const lode_error* error, std::size_t index) {
    return error ? entry(error->what.words, index) : nullptr;
}

std::size_t lode_error_advice_count(const lode_error* error) {
    return error ? error->what.advice.size() : 0;
}

const char* lode_error_advice(const lode_error* error, std::size_t index) {
    return error ? entry(error->what.advice, index) : nullptr;
}

void lode_error_free(lode_error* error) {
    if (error != &out_of_memory()) delete error;
}
