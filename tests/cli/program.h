// Runs the real program as a person's shell would, and looks at what it left behind.
#pragma once

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <csignal>
#include <cstdlib>

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace understudy {

struct Outcome {
    int status = -1;  // 128 + the signal's number when one ended the program, as a shell says it
    std::string out;
    std::string err;
};

inline std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// A folder that goes away with the test; the program runs in it.
class Workplace {
  public:
    Workplace() {
        std::string name = (std::filesystem::temp_directory_path() / "understudy-cli-XXXXXX").string();
        folder_ = mkdtemp(name.data());
    }
    ~Workplace() {
        std::error_code error;
        std::filesystem::remove_all(folder_, error);
    }
    Workplace(const Workplace&) = delete;
    Workplace& operator=(const Workplace&) = delete;

    std::filesystem::path path(const std::string& name) const { return folder_ / name; }

    std::filesystem::path write(const std::string& name, const std::string& text) const {
        std::ofstream(path(name), std::ios::binary) << text;
        return path(name);
    }

    std::vector<std::string> names() const {
        std::vector<std::string> all;
        for (const auto& entry : std::filesystem::directory_iterator(folder_)) {
            if (entry.path().filename() != "stdout" && entry.path().filename() != "stderr")
                all.push_back(entry.path().filename().string());
        }
        return all;
    }

    // largest_file: bytes after which a write fails as on a full disk; 0 for no limit.
    pid_t start(const std::vector<std::string>& arguments, rlim_t largest_file = 0) const {
        const pid_t child = fork();
        if (child != 0) return child;
        std::string program = std::string(UNDERSTUDY_BUILD_DIR) + "/understudy";
        std::vector<std::string> words = arguments;
        std::vector<char*> pointers{program.data()};
        for (std::string& word : words) pointers.push_back(word.data());
        pointers.push_back(nullptr);
        if (chdir(folder_.c_str()) != 0) _exit(126);
        // The limit would count for what is printed as well.
        const char* printed = largest_file > 0 ? "/dev/null" : "stdout";
        dup2(open(printed, O_CREAT | O_TRUNC | O_WRONLY, 0600), STDOUT_FILENO);
        dup2(open("stderr", O_CREAT | O_TRUNC | O_WRONLY, 0600), STDERR_FILENO);
        if (largest_file > 0) {
            std::signal(SIGXFSZ, SIG_IGN);  // so that the write itself fails
            const rlimit limit{largest_file, largest_file};
            setrlimit(RLIMIT_FSIZE, &limit);
        }
        execv(program.c_str(), pointers.data());
        _exit(127);
    }

    Outcome finish(pid_t child) const {
        int status = 0;
        waitpid(child, &status, 0);
        Outcome outcome;
        outcome.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
        outcome.out = contents(path("stdout"));
        outcome.err = contents(path("stderr"));
        return outcome;
    }

    Outcome run(const std::vector<std::string>& arguments, rlim_t largest_file = 0) const {
        return finish(start(arguments, largest_file));
    }

  private:
    std::filesystem::path folder_;
};

// A ball and a bulb: small, quick, complete.
inline const std::string kBall =
    "[picture]\nwidth = 32\nheight = 40\nsamples = 4\n[sitter]\nhead = \"ball\"\n"
    "[[light]]\nname = \"key\"\nmodifier = \"bulb\"\nangle = -45\nmeter = 4\n";

}  // namespace understudy
