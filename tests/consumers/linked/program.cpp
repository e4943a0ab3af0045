// A user of the core library who reads a grid's size, right and wrong.
#include <iostream>

#include <letterlode/grid.hpp>

int main() {
    const auto size = lode::read_size("15x12");
    if (!size || size->columns != 15 || size->rows != 12) {
        std::cerr << "15x12 was not read as 15 columns and 12 rows\n";
        return 1;
    }
    const auto wrong = lode::read_size("0x3");
    if (wrong || wrong.refusal().reason != lode::Refusal::Reason::unusable ||
        wrong.refusal().message.empty()) {
        std::cerr << "0x3 was taken\n";
        return 1;
    }
    std::cout << "linked and run\n";
}
