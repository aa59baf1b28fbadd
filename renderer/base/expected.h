// A value, or the reasons why there is none.
#pragma once

#include <cassert>
#include <utility>
#include <variant>

#include "base/problem.h"

namespace understudy {

template <class T>
class [[nodiscard]] Expected {
  public:
    Expected(T value) : state_(std::in_place_index<0>, std::move(value)) {}
    Expected(Problems problems) : state_(std::in_place_index<1>, std::move(problems)) {
        assert(!std::get<1>(state_).empty());
    }
    Expected(Problem problem) : Expected(Problems{std::move(problem)}) {}

    explicit operator bool() const { return state_.index() == 0; }

    T& value() {
        assert(*this);
        return std::get<0>(state_);
    }
    const T& value() const {
        assert(*this);
        return std::get<0>(state_);
    }
    T& operator*() { return value(); }
    const T& operator*() const { return value(); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }

    const Problems& problems() const {
        assert(!*this);
        return std::get<1>(state_);
    }

  private:
    std::variant<T, Problems> state_;
};

// The outcome of something that gives nothing back but may fail.
struct Done {};

}  // namespace understudy
