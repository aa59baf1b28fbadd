// Tables that take milliseconds to make and rest on two numbers only: each is made once a program.
#pragma once

#include <array>
#include <map>
#include <mutex>

#include "scatter/directional_albedo.h"

namespace understudy {

class TableStore {
  public:
    // make: from nothing to the table of this key, called at most once for it. May be asked by several threads.
    template <class Make>
    DirectionalAlbedo of(const std::array<float, 2>& key, const Make& make) {
        const std::lock_guard lock(mutex_);
        const auto known = tables_.find(key);
        return known != tables_.end() ? known->second : tables_.emplace(key, make()).first->second;
    }

  private:
    std::mutex mutex_;
    std::map<std::array<float, 2>, DirectionalAlbedo> tables_;
};

}  // namespace understudy
