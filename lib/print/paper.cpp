#include <letterlode/paper.hpp>

namespace lode {

std::string_view name(Paper paper) {
    return paper == Paper::a4 ? "a4" : "letter";
}

std::optional<Paper> paper_named(std::string_view text) {
    for (const Paper paper : {Paper::a4, Paper::letter})
        if (text == name(paper)) return paper;
    return std::nullopt;
}

PageSize size_of(Paper paper) {
    return paper == Paper::a4 ? PageSize{210, 297} : PageSize{215.9, 279.4};
}

}  // namespace lode
