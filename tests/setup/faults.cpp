// faults KIND: does on purpose what a sanitizer must see. It is built with the flags of the project's own
// code, so that a build that was asked for sanitizers and has none is found.
#include <climits>
#include <cstdlib>
#include <memory>
#include <string_view>

namespace {

int read_past_the_end(std::size_t length) {
    const auto numbers = std::make_unique<volatile int[]>(length);
    return numbers[length];
}

int overflow(int number) {
    return number + 1;
}

void lose_memory() {
    volatile char* lost = static_cast<char*>(std::malloc(64));
    lost[0] = 1;
    lost = nullptr;
}

}  // namespace

int main(int count, char** arguments) {
    const std::string_view kind = count == 2 ? arguments[1] : "";
    volatile int result = 0;
    if (kind == "read") result = read_past_the_end(static_cast<std::size_t>(count));
    if (kind == "overflow") result = overflow(INT_MAX - 2 + count);
    if (kind == "leak") lose_memory();
    return result == 0 ? 0 : 1;
}
