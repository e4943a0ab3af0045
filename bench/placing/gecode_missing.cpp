// In place of gecode_peer.cpp where this program is built without Gecode.

#include "engines.hpp"

namespace lode::bench {

std::vector<Engine> constraint_solvers() {
    return {};
}

}  // namespace lode::bench
