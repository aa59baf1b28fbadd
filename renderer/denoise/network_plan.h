// The network's steps for pictures of one size, made once and used for every picture of that size.
#pragma once

#include <memory>
#include <vector>

#include "denoise/convolution.h"

namespace understudy {

class NetworkRoom;

class NetworkPlan {
  public:
    // Both multiples of Network::kStep.
    struct Size {
        int width = 0;
        int height = 0;
        bool operator==(const Size&) const = default;
    };
    // Both have to live as long.
    NetworkPlan(const Convolutions& convolutions, NetworkRoom& room, const Size& size);
    ~NetworkPlan();
    NetworkPlan(const NetworkPlan&) = delete;
    NetworkPlan& operator=(const NetworkPlan&) = delete;

    const Size& size() const { return size_; }

    // See Network::run. All plans in a room by one thread at a time.
    std::vector<float> run(const std::vector<float>& planes);

  private:
    struct Inside;
    Size size_;
    std::unique_ptr<Inside> inside_;
};

}  // namespace understudy
