// JSON of strangers through the C API: any bytes are a recipe, a puzzle or an error that says where; and what
// was read is written as JSON that reads back as the same.

#include <cstdint>
#include <cstdlib>
#include <string>

#include <letterlode/letterlode.h>

namespace {

void require(bool holds) {
    if (!holds) std::abort();
}

// An input's end is where a C string ends.
template <class Handle>
Handle* read(std::int32_t (*from_json)(Handle**, const char*, const char*, lode_error**), const char* json) {
    Handle* handle = nullptr;
    lode_error* error = nullptr;
    const std::int32_t status = from_json(&handle, json, "input.json", &error);
    require(status == LODE_OK || status == LODE_UNUSABLE);
    require((status == LODE_OK) == (handle != nullptr) && (status == LODE_OK) == (error == nullptr));
    if (error) {
        require(*lode_error_message(error) != '\0' && lode_error_advice_count(error) > 0);
        require(std::string(lode_error_source(error)) == "input.json");
        require(lode_error_line(error) >= 0 && lode_error_position(error) >= 0);
    }
    lode_error_free(error);
    return handle;
}

template <class Handle>
void read_and_write(std::int32_t (*from_json)(Handle**, const char*, const char*, lode_error**),
                    std::int32_t (*to_json)(const char**, const Handle*, lode_error**), void (*free)(Handle*),
                    const char* json) {
    Handle* const handle = read(from_json, json);
    if (!handle) return;
    const char* written = nullptr;
    require(to_json(&written, handle, nullptr) == LODE_OK);
    Handle* const again = read(from_json, written);
    require(again != nullptr);
    const char* written_again = nullptr;
    require(to_json(&written_again, again, nullptr) == LODE_OK);
    require(std::string(written) == written_again);
    free(again);
    free(handle);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string json(reinterpret_cast<const char*>(data), size);
    read_and_write(lode_recipe_from_json, lode_recipe_json, lode_recipe_free, json.c_str());
    read_and_write(lode_puzzle_from_json, lode_puzzle_json, lode_puzzle_free, json.c_str());
    return 0;
}
