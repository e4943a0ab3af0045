#include <algorithm>

#include "c/handles.hpp"

using namespace lode::c;

namespace {

// Where a copy stands, for out parameters.
struct CopyResult {
    std::int32_t* row;
    std::int32_t* column;
    std::int32_t* direction;
    std::int32_t* length;

    void clear_all() const noexcept {
        for (auto* result : {row, column, direction, length}) clear(result);
    }
    void need_all() const {
        need(row, "row");
        need(column, "column");
        need(direction, "direction");
        need(length, "length");
    }
    void set(const lode::Copy& copy) const {
        *row = copy.first.row;
        *column = copy.first.column;
        *direction = static_cast<std::int32_t>(copy.direction);
        *length = copy.length;
    }
};

using Findings = std::vector<lode::AvoidedFinding>;

std::int32_t give_finding(const char* function, const CopyResult& result, const lode_audit* audit,
                          const Findings lode::Audit::*findings, std::size_t index, lode_error** error) {
    result.clear_all();
    return guarded(function, error, [&] {
        result.need_all();
        result.set(need_at(need(audit, "audit").audit.*findings, index, "finding").copy);
        return LODE_OK;
    });
}

const char* finding_word(const lode_audit* audit, const Findings lode::Audit::*findings, std::size_t index) {
    const auto* finding = audit ? at(audit->audit.*findings, index) : nullptr;
    return finding ? finding->word.c_str() : nullptr;
}

const lode::WordFinding* word_of(const lode_audit* audit, std::size_t word) {
    return audit ? at(audit->audit.words, word) : nullptr;
}

}  // namespace

std::int32_t lode_audit_puzzle(lode_audit** audit, const lode_puzzle* puzzle, lode_error** error) {
    clear(audit);
    return guarded(__func__, error, [&] {
        auto& result = need(audit, "audit");
        result = new lode_audit{taken(lode::audit(need(puzzle, "puzzle").puzzle)), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_audit_grid_text(lode_audit** audit, const char* grid, const char* source,
                                  const lode_recipe* recipe, lode_error** error) {
    clear(audit);
    return guarded(__func__, error, [&] {
        auto& result = need(audit, "audit");
        const std::string_view drawn = text(grid, "grid");
        const lode::Recipe& rules = need(recipe, "recipe").recipe;
        const auto segmenter = taken(lode::Segmenter::open(rules.text));
        const auto lettered = taken(lode::read_grid(drawn, source_name(source), segmenter));
        result = new lode_audit{taken(lode::audit(lettered, rules)), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_audit_is_certified(const lode_audit* audit) {
    return audit && audit->audit.certified ? 1 : 0;
}

std::int32_t lode_audit_is_cut_short(const lode_audit* audit) {
    return audit && audit->audit.cut_short ? 1 : 0;
}

std::size_t lode_audit_word_count(const lode_audit* audit) {
    return audit ? audit->audit.words.size() : 0;
}

const char* lode_audit_word(const lode_audit* audit, std::size_t word) {
    const auto* finding = word_of(audit, word);
    return finding ? finding->shown.c_str() : nullptr;
}

std::int32_t lode_audit_expected(const lode_audit* audit, std::size_t word) {
    const auto* finding = word_of(audit, word);
    return finding ? finding->expected : 0;
}

std::size_t lode_audit_copy_count(const lode_audit* audit, std::size_t word) {
    const auto* finding = word_of(audit, word);
    return finding ? finding->copies.size() : 0;
}

std::size_t lode_audit_stray_count(const lode_audit* audit, std::size_t word) {
    const auto* finding = word_of(audit, word);
    return finding ? finding->stray.size() : 0;
}

std::int32_t lode_audit_copy(std::int32_t* row, std::int32_t* column, std::int32_t* direction,
                             std::int32_t* length, std::int32_t* is_stray, const lode_audit* audit,
                             std::size_t word, std::size_t copy, lode_error** error) {
    const CopyResult result{row, column, direction, length};
    result.clear_all();
    clear(is_stray);
    return guarded(__func__, error, [&] {
        result.need_all();
        need(is_stray, "is_stray");
        const auto& finding = need_at(need(audit, "audit").audit.words, word, "word");
        const auto& found = need_at(finding.copies, copy, "copy");
        result.set(found);
        *is_stray = std::find(finding.stray.begin(), finding.stray.end(), found) != finding.stray.end();
        return LODE_OK;
    });
}

const char* lode_audit_copy_inside(const lode_audit* audit, std::size_t word, std::size_t copy) {
    const auto* finding = word_of(audit, word);
    if (!finding || copy >= finding->copies.size()) return nullptr;
    // Nothing is listed of a word that no other can hold.
    return finding->inside.empty() ? "" : finding->inside[copy].c_str();
}

std::size_t lode_audit_avoided_count(const lode_audit* audit) {
    return audit ? audit->audit.avoided.size() : 0;
}

const char* lode_audit_avoided(const lode_audit* audit, std::size_t index) {
    return finding_word(audit, &lode::Audit::avoided, index);
}

std::int32_t lode_audit_avoided_copy(std::int32_t* row, std::int32_t* column, std::int32_t* direction,
                                     std::int32_t* length, const lode_audit* audit, std::size_t index,
                                     lode_error** error) {
    return give_finding(__func__, {row, column, direction, length}, audit, &lode::Audit::avoided, index,
                        error);
}

std::size_t lode_audit_allowed_count(const lode_audit* audit) {
    return audit ? audit->audit.allowed.size() : 0;
}

const char* lode_audit_allowed(const lode_audit* audit, std::size_t index) {
    return finding_word(audit, &lode::Audit::allowed, index);
}

std::int32_t lode_audit_allowed_copy(std::int32_t* row, std::int32_t* column, std::int32_t* direction,
                                     std::int32_t* length, const lode_audit* audit, std::size_t index,
                                     lode_error** error) {
    return give_finding(__func__, {row, column, direction, length}, audit, &lode::Audit::allowed, index,
                        error);
}

std::size_t lode_audit_chance_count(const lode_audit* audit) {
    return audit ? audit->audit.chance.size() : 0;
}

const char* lode_audit_chance(const lode_audit* audit, std::size_t index) {
    return finding_word(audit, &lode::Audit::chance, index);
}

std::int32_t lode_audit_chance_copy(std::int32_t* row, std::int32_t* column, std::int32_t* direction,
                                    std::int32_t* length, const lode_audit* audit, std::size_t index,
                                    lode_error** error) {
    return give_finding(__func__, {row, column, direction, length}, audit, &lode::Audit::chance, index,
                        error);
}

std::int32_t lode_audit_json(const char** json, const lode_audit* audit, lode_error** error) {
    return give_kept(__func__, json, "json", audit, "audit", &lode_audit::json, error,
                     [](const lode_audit& its) { return lode::to_json(its.audit); });
}

std::int32_t lode_audit_text(const char** text, const lode_audit* audit, lode_error** error) {
    return give_kept(__func__, text, "text", audit, "audit", &lode_audit::text, error,
                     [](const lode_audit& its) { return lode::audit_text(its.audit); });
}

void lode_audit_free(lode_audit* audit) {
    delete audit;
}
