#include "art_library.hpp"

#include <dlfcn.h>
#include <letterlode/version.hpp>

namespace lode::cli {
namespace {

// Where the core's library was loaded from, with the slash: a moved tree and a loader that was told where to look
// have found that already. Empty where it is part of the program.
std::string folder_of_libraries() {
    ::Dl_info core{};
    if (::dladdr(reinterpret_cast<const void*>(&lode::version), &core) == 0 || !core.dli_fname) return {};
    const std::string file = core.dli_fname;
    return file.substr(0, file.rfind('/') + 1);
}

// It stays open until the end.
const ArtLibrary& opened() {
    const std::string file = folder_of_libraries() + artwork_module;
    void* const module = ::dlopen(file.c_str(), RTLD_NOW | RTLD_LOCAL);
    void* const entry = module ? ::dlsym(module, artwork_module_entry) : nullptr;
    if (!entry)
        throw MissingPart(std::string("the part that draws and prints cannot be loaded: ") + ::dlerror());
    return *reinterpret_cast<const ArtLibrary* (*)()>(entry)();
}

}  // namespace

const ArtLibrary& art_library() {
    static const ArtLibrary& library = opened();
    return library;
}

}  // namespace lode::cli
