// The problems of one scene file, gathered while it is read and told in the order of their places.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "setup/setup.h"

namespace understudy {

class ProblemLog {
  public:
    // "file:line:column: what is wrong; expected …"
    void add(const SourcePlace& place, std::string_view what, std::string_view expected);
    // Problems of another file that this place named.
    void add_all(const SourcePlace& place, const Problems& problems);

    bool empty() const { return noted_.empty(); }
    Problems in_order() const;

  private:
    struct Noted {
        SourcePlace place;
        Problem problem;
    };
    std::vector<Noted> noted_;
};

// A name or a value of the file as it may stand in a message: one line, no control characters, not endless.
std::string shown(std::string_view text);

// "file:line:column: what"
Problem problem_at(const SourcePlace& place, std::string_view what);

}  // namespace understudy
