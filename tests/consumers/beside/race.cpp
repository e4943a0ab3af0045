// Does on purpose what the thread sanitizer must see: two threads write one number.
#include <thread>

int main() {
    int number = 0;
    std::thread other([&number] { ++number; });
    ++number;
    other.join();
    return number == 2 ? 0 : 1;
}
