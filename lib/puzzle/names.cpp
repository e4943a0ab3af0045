#include <letterlode/puzzle.hpp>

namespace lode {

std::string_view name(Nested rule) {
    return rule == Nested::inside ? "inside" : "separate";
}

std::optional<Nested> nested_named(std::string_view wanted) {
    for (const Nested rule : {Nested::inside, Nested::separate})
        if (name(rule) == wanted) return rule;
    return std::nullopt;
}

}  // namespace lode
