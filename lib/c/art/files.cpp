// The bytes of one file, and the files of a folder.

#include <algorithm>

#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

namespace {

// The path as it was given, where nothing stands that is not to be replaced.
std::string place_for(const char* path, const char* name, bool replace, const lode::Disk& disk) {
    std::string place = raw_text(path, name);
    if (place.empty()) throw_unusable("The path is empty.", "Give the name of a new file or folder.");
    if (!replace && disk.exists(place))
        throw Unusable{{lode::Refusal::Reason::unusable,
                        "'" + place + "' exists already.",
                        {},
                        {"Give another path, or ask to replace it."},
                        place,
                        0}};
    return place;
}

// Folders and a file's name, with '/' between, none of which leads upwards or nowhere.
bool stays_inside(std::string_view path) {
    for (std::size_t from = 0; from <= path.size();) {
        const auto slash = std::min(path.find('/', from), path.size());
        const std::string_view part = path.substr(from, slash - from);
        if (part.empty() || part == "." || part == "..") return false;
        from = slash + 1;
    }
    return true;
}

// Whether one is the other, or a folder of it.
bool in_the_way(const std::string& one, const std::string& other) {
    return one == other || one.starts_with(other + "/") || other.starts_with(one + "/");
}

const lode::NamedFile* file_of(const lode_files* files, std::size_t index) {
    return files ? at(files->files, index) : nullptr;
}

}  // namespace

const void* lode_bytes_data(const lode_bytes* bytes) {
    return bytes ? bytes->bytes.data() : nullptr;
}

std::size_t lode_bytes_size(const lode_bytes* bytes) {
    return bytes ? bytes->bytes.size() : 0;
}

std::int32_t lode_bytes_write(const lode_bytes* bytes, const char* path, std::int32_t replace,
                              lode_error** error) {
    return guarded(__func__, error, [&] {
        const std::string& all = need(bytes, "bytes").bytes;
        lode::Disk disk;
        const std::string place = place_for(path, "path", replace != 0, disk);
        lode::write_file(place, all, disk);
        return LODE_OK;
    });
}

void lode_bytes_free(lode_bytes* bytes) {
    delete bytes;
}

std::int32_t lode_files_create(lode_files** files, lode_error** error) {
    return give_new(__func__, files, "files", error);
}

std::int32_t lode_files_add(lode_files* files, const char* path, const void* data, std::size_t size,
                            lode_error** error) {
    return guarded(__func__, error, [&] {
        auto& all = need(files, "files").files;
        std::string place = raw_text(path, "path");
        if (size > 0) need(static_cast<const char*>(data), "data");
        if (!stays_inside(place))
            throw_unusable("'" + place + "' is no path inside a folder.",
                           "Give one such as puzzle.json or pages/herbs.pdf.");
        for (const lode::NamedFile& file : all)
            if (in_the_way(file.path, place))
                throw_unusable("'" + place + "' and '" + file.path + "' cannot stand in one folder.",
                               "Give another path.");
        std::string bytes;
        if (size > 0) bytes.assign(static_cast<const char*>(data), size);
        all.push_back({std::move(place), std::move(bytes)});
        return LODE_OK;
    });
}

std::size_t lode_files_count(const lode_files* files) {
    return files ? files->files.size() : 0;
}

const char* lode_files_path(const lode_files* files, std::size_t index) {
    const auto* file = file_of(files, index);
    return file ? file->path.c_str() : nullptr;
}

const void* lode_files_data(const lode_files* files, std::size_t index) {
    const auto* file = file_of(files, index);
    return file ? file->bytes.data() : nullptr;
}

std::size_t lode_files_size(const lode_files* files, std::size_t index) {
    const auto* file = file_of(files, index);
    return file ? file->bytes.size() : 0;
}

std::int32_t lode_files_write(const lode_files* files, const char* folder, std::int32_t replace,
                              lode_error** error) {
    return guarded(__func__, error, [&] {
        const auto& all = need(files, "files").files;
        lode::Disk disk;
        const std::string place = place_for(folder, "folder", replace != 0, disk);
        static_cast<void>(taken(lode::write_folder(place, all, replace != 0, disk)));
        return LODE_OK;
    });
}

void lode_files_free(lode_files* files) {
    delete files;
}
