// A library for tests: the project's kit, and heads of which only the names matter here.
#pragma once

#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

#include "setup/read_setup.h"

namespace understudy {

class ScratchLibrary {
  public:
    ScratchLibrary() {
        static int count = 0;
        folder_ = std::filesystem::temp_directory_path() /
                  ("understudy-setup-" + std::to_string(getpid()) + "-" + std::to_string(count++));
        library_.kit = std::filesystem::path(UNDERSTUDY_SOURCE_DIR) / "assets" / "kit";
        library_.heads = folder_ / "heads";
        std::filesystem::create_directories(library_.heads);
        for (const char* name : {"aspen", "birch", "hazel", "juniper", "rowan", "willow"}) {
            std::ofstream(library_.heads / (std::string(name) + ".toml")) << "# a head\n";
        }
        std::ofstream(folder_ / "own.obj") << "v 0 0 0\n";
    }
    ~ScratchLibrary() {
        std::error_code error;
        std::filesystem::remove_all(folder_, error);
    }
    ScratchLibrary(const ScratchLibrary&) = delete;
    ScratchLibrary& operator=(const ScratchLibrary&) = delete;

    const Library& library() const { return library_; }
    Library& library() { return library_; }
    const std::filesystem::path& folder() const { return folder_; }

    Expected<Setup> parse(const std::string& text) const { return parse_setup(text, folder_ / "scene.toml", library_); }

  private:
    std::filesystem::path folder_;
    Library library_;
};

inline std::string all_text(const Problems& problems) {
    std::string text;
    for (const Problem& problem : problems) {
        text += problem.text + "\n";
    }
    return text;
}

}  // namespace understudy
