// What most tests include: compiled once for all of them where LODE_PRECOMPILE is on. No file includes this one.
#pragma once

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <functional>
#include <map>
#include <memory>
#include <numeric>
#include <optional>
#include <random>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>
