#pragma once
// How much less of a long series a test runs where sanitizers watch: its code takes some ten times as long there, and comes by the
// same places. Release builds run all of it.

namespace lode::test {

#if defined(__SANITIZE_ADDRESS__)
constexpr int slowed = 5;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
constexpr int slowed = 5;
#else
constexpr int slowed = 1;
#endif
#else
constexpr int slowed = 1;
#endif

}  // namespace lode::test
