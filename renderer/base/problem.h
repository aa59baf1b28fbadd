// What went wrong, in words for the person who can mend it.
//
// An error that a user can cause is a value of this kind; a programmer's error is an assertion.
#pragma once

#include <string>
#include <vector>

namespace understudy {

// Who has to act, which is also the process's exit status.
enum class Blame {
    kFailed = 1,      // the machine: no space, no permission, a lost network
    kWrongInput = 2,  // the person: a scene file, a mesh or a command line that cannot be used
};

struct Problem {
    Blame blame = Blame::kWrongInput;
    // "file:line:column: what is wrong; what was expected", as it is printed.
    std::string text;
};

using Problems = std::vector<Problem>;

}  // namespace understudy
