#include "sitter/obj_check.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <optional>

namespace understudy {
namespace {

constexpr std::size_t kMostProblems = 10;

std::string_view next_word(std::string_view& line) {
    const auto first = line.find_first_not_of(" \t\r");
    if (first == std::string_view::npos) return line = {};
    line.remove_prefix(first);
    const auto length = std::min(line.find_first_of(" \t\r"), line.size());
    const auto word = line.substr(0, length);
    line.remove_prefix(length);
    return word;
}

std::optional<double> finite_number(std::string_view word) {
    if (word.starts_with('+')) word.remove_prefix(1);
    double number = 0.0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), number);
    if (error != std::errc() || end != word.data() + word.size() || !std::isfinite(number)) return std::nullopt;
    return number;
}

class Checker {
  public:
    explicit Checker(const std::string& name) : name_(name) {}

    void line(std::string_view text) {
        ++line_;
        const auto keyword = next_word(text);
        if (keyword == "v") vertex(text);
        if (keyword == "f") face(text);
    }

    bool enough() const { return problems_.size() >= kMostProblems || faces_ > kMostObjFaces; }

    Expected<Done> result() {
        if (faces_ > kMostObjFaces) {
            return Problem{Blame::kWrongInput,
                           fmt::format("{}:{}: too large; expected at most {} faces", name_, line_, kMostObjFaces)};
        }
        if (problems_.empty() && faces_ == 0) {
            say_of_file(vertices_ == 0 ? "the file is empty; expected vertices and faces"
                                       : "no faces; expected a mesh");
        }
        if (problems_.empty()) return Done{};
        return problems_;
    }

  private:
    void say(const std::string& what) {
        problems_.push_back({Blame::kWrongInput, fmt::format("{}:{}: {}", name_, line_, what)});
    }
    void say_of_file(const std::string& what) {
        problems_.push_back({Blame::kWrongInput, fmt::format("{}: {}", name_, what)});
    }

    void vertex(std::string_view rest) {
        ++vertices_;
        for (int k = 0; k < 3; ++k) {
            const auto word = next_word(rest);
            if (finite_number(word)) continue;
            say(word.empty() ? std::string("a vertex cut short; expected three coordinates")
                             : fmt::format("\"{}\" is no finite coordinate; expected a number", word));
            return;
        }
    }

    void face(std::string_view rest) {
        ++faces_;
        int corners = 0;
        for (auto word = next_word(rest); !word.empty(); word = next_word(rest)) {
            if (!corner(word.substr(0, word.find('/')))) return;
            ++corners;
        }
        if (corners < 3) say(fmt::format("a face of {} corners; expected 3 or more", corners));
    }

    // Numbers count from 1, or back from the last vertex when negative.
    bool corner(std::string_view word) {
        long long number = 0;
        const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), number);
        if (error != std::errc() || end != word.data() + word.size()) {
            say(fmt::format("\"{}\" is no vertex number", word));
            return false;
        }
        const long long index = number < 0 ? vertices_ + number + 1 : number;
        if (index >= 1 && index <= vertices_) return true;
        say(fmt::format("vertex {} does not exist; expected 1 to {}", number, vertices_));
        return false;
    }

    const std::string& name_;
    Problems problems_;
    std::size_t line_ = 0;
    std::size_t faces_ = 0;
    long long vertices_ = 0;
};

}  // namespace

Expected<Done> check_obj(std::string_view text, const std::string& name) {
    Checker checker(name);
    while (!text.empty() && !checker.enough()) {
        const auto length = std::min(text.find('\n'), text.size());
        checker.line(text.substr(0, length));
        text.remove_prefix(std::min(length + 1, text.size()));
    }
    return checker.result();
}

}  // namespace understudy
