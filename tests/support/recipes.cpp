#include "support/recipes.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace lode::test {

WordLines list_of(const std::vector<std::string>& words, const std::string& source) {
    WordLines list{source, {}};
    int line = 0;
    for (const auto& word : words) list.words.push_back({word, ++line});
    return list;
}

Recipe recipe_of(const std::vector<std::string>& words, std::optional<Size> size, std::uint64_t seed) {
    Recipe recipe;
    recipe.words = list_of(words);
    recipe.size = size;
    recipe.seed = seed;
    recipe.directions = Directions::all();
    recipe.default_avoid_list = false;
    return recipe;
}

std::string data_file(const std::string& path) {
    std::ifstream file(LODE_DATA "/" + path);
    if (!file) throw std::runtime_error("data/" + path + " is missing");
    std::ostringstream all;
    all << file.rdbuf();
    return all.str();
}

}  // namespace lode::test
