// The denoising network: a U of 3 × 3 convolutions that halves its picture four times and puts it together again, each
// level joined to its like on the way down (Ronneberger and others, "U-Net", 2015, as Open Image Denoise trains it).
// Which convolutions there are, and how wide, is read from the weights.
#pragma once

#include <memory>
#include <vector>

#include "base/expected.h"
#include "denoise/weights_file.h"

namespace understudy {

class Network {
  public:
    // Weights of another shape than such a network's are a problem. where: the file, for messages.
    static Expected<Network> of(const Weights& weights, const std::string& where);
    ~Network();
    Network(Network&&) noexcept;
    Network& operator=(Network&&) noexcept;

    int inputs() const;  // channels

    // Sizes have to be multiples of this.
    static constexpr int kStep = 16;
    // Farther than this no pixel of the input counts for one of the output.
    static constexpr int kReach = 176;

    // planes: inputs() pictures of width × height, one after the other. Three such pictures come back.
    std::vector<float> run(const std::vector<float>& planes, int width, int height) const;

  private:
    struct Inside;
    explicit Network(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

}  // namespace understudy
