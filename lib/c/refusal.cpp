#include "c/handles.hpp"

using namespace lode::c;

std::int32_t lode_refusal_reason(const lode_refusal* refusal) {
    if (!refusal) return 0;
    switch (refusal->refusal.reason) {
        case lode::Refusal::Reason::impossible:
            return LODE_REASON_IMPOSSIBLE;
        case lode::Refusal::Reason::unfinished:
            return LODE_REASON_UNFINISHED;
        case lode::Refusal::Reason::unusable:
            return LODE_REASON_UNUSABLE;
    }
    return 0;
}

const char* lode_refusal_message(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.message.c_str() : nullptr;
}

const char* lode_refusal_source(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.source.c_str() : nullptr;
}

std::int32_t lode_refusal_line(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.line : 0;
}

std::int32_t lode_refusal_position(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.position : 0;
}

std::size_t lode_refusal_word_count(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.words.size() : 0;
}

const char* lode_refusal_word(const lode_refusal* refusal, std::size_t index) {
    return refusal ? entry(refusal->refusal.words, index) : nullptr;
}

std::size_t lode_refusal_advice_count(const lode_refusal* refusal) {
    return refusal ? refusal->refusal.advice.size() : 0;
}

const char* lode_refusal_advice(const lode_refusal* refusal, std::size_t index) {
    return refusal ? entry(refusal->refusal.advice, index) : nullptr;
}

std::int32_t lode_refusal_json(const char** json, const lode_refusal* refusal, lode_error** error) {
    return give_kept(__func__, json, "json", refusal, "refusal", &lode_refusal::json, error,
                     [](const lode_refusal& its) { return lode::to_json(its.refusal); });
}

void lode_refusal_free(lode_refusal* refusal) {
    delete refusal;
}
