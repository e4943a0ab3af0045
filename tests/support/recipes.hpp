#pragma once
// Short ways to make recipes and puzzles in tests.

#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

namespace lode::test {

WordLines list_of(const std::vector<std::string>& words, const std::string& source = "beds.txt");

// All eight directions, no avoid list, lines counted from 1.
Recipe recipe_of(const std::vector<std::string>& words, std::optional<Size> size = std::nullopt,
                 std::uint64_t seed = 1);

// A file of the folder data, whole.
std::string data_file(const std::string& path);

}  // namespace lode::test
