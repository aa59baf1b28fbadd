// The network's steps one after another: what the library makes of each for this processor.
//
// Channels lie in blocks of as many as a vector holds, the layout that the library's quickest convolutions work in:
// with AVX-512 Winograd's, two to three times as quick as the plain ones (A. Lavin and S. Gray, "Fast Algorithms for
// Convolutional Neural Networks", CVPR 2016), with AVX2 the plain ones. Channels are filled up with zeros to whole
// blocks: with odd counts the library falls back on code that is a thousand times as slow.
//
// The library chooses its way, and with it the last digits, by how many threads it is told of. So it is told of all
// that the machine has, whatever the program may use: pictures are the same for any number.
#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <memory>
#include <unordered_map>
#include <utility>
#include <vector>

#include <dnnl.hpp>

#include "denoise/convolution.h"

namespace understudy {

// What networks for pictures of different sizes share, for they run one at a time: weights as the library wants them,
// and room for what they work on.
class NetworkRoom {
  public:
    // Made once for each part of a convolution that wants them so laid out.
    const dnnl::memory& weights_of(const Convolution& convolution, int first, int count,
                                   const dnnl::memory::desc& wanted);
    // Of so many numbers at least. It moves when it has to grow.
    float* numbers(dnnl::memory::dim count);

    dnnl::engine engine{dnnl::engine::kind::cpu, 0};
    dnnl::stream stream{engine};

  private:
    struct LaidOut {
        const Convolution* convolution;
        int first;
        dnnl::memory weights;
    };
    std::deque<LaidOut> laid_out_;
    dnnl::memory numbers_;
};

// Where levels lie, one after another; as large as the largest of them.
struct LevelPlace {
    dnnl::memory::dim largest = 0;  // numbers
    dnnl::memory::dim first = 0;    // of the room's
    std::vector<dnnl::memory> held;
    float* numbers = nullptr;
};

// A picture on its way, of so many channels.
struct Level {
    LevelPlace* place = nullptr;
    int channels = 0;
    int width = 0, height = 0;
};

class NetworkSteps {
  public:
    using Step = std::pair<dnnl::primitive, std::unordered_map<int, dnnl::memory>>;

    // The room has to live as long.
    explicit NetworkSteps(NetworkRoom& room);

    // ---- building; every step goes behind those before ----

    // A level that stays until its steps are run again.
    Level in_own_place(int channels, int width, int height);
    // What only the step behind it needs, of one or of two levels; a rectifier follows. Of both: as if the second's
    // channels came behind the first's, which are never laid side by side: the second's sums are added to the first's.
    Level convolved(const Level& from, const Convolution& convolution);
    Level convolved(const Level& first, const Level& second, const Convolution& convolution);
    // The same, into a level that stays.
    void convolve(const Level& from, const Convolution& convolution, const Level& to);
    // Each 2 × 2 pixels' largest, into a place of its own.
    Level halved(const Level& from);
    // Twice as large, each pixel four times.
    Level doubled(const Level& from);

    // So many steps there are.
    std::size_t count() const { return steps_.size(); }
    // When all are built: how much room they take.
    void close();

    // ---- running ----

    // Before the first step of a run.
    void enter_room();
    void run(std::size_t first, std::size_t end);
    // Rows of plain planes, which have plane_height rows, into all of a level; beyond its channels there are zeros.
    void put(const float* planes, int plane_height, int first_row, const Level& to);
    // Some of a level's rows, of which no channel lies beyond the first block, into plain planes.
    void get(const Level& from, int first_row, int rows, float* planes, int plane_height, int to_row);
    // Rows of one level to another of the same width and channels.
    void copy_rows(const Level& from, int first_row, int rows, const Level& to, int to_row) const;

  private:
    // Some of what a convolution takes in, and what becomes of its sums.
    struct Part {
        int first = 0;
        int count = 0;
        bool is_added = false;  // to what is there
        bool is_last = true;    // the rectifier follows
    };
    Level in_turn(const Level& source, int channels, int width, int height);
    dnnl::memory held(const Level& level);
    void add_convolution(const Level& from, const Level& to, const Convolution& convolution, const Part& part);
    dnnl::convolution_forward::primitive_desc quickest(const Level& from, const Level& to, const Part& part) const;
    dnnl::memory biases_of(const Convolution& convolution, const Part& part) const;
    static dnnl::primitive_attr attributes_of(const Part& part);
    std::ptrdiff_t row_of_block(const Level& level) const;  // numbers

    NetworkRoom& room_;
    dnnl::memory::format_tag tag_ = dnnl::memory::format_tag::nChw8c;
    std::vector<Step> steps_;
    std::vector<std::unique_ptr<LevelPlace>> places_;
    std::array<LevelPlace*, 2> turns_{};
    LevelPlace* scratch_ = nullptr;  // of all steps: they come one after another
    dnnl::memory::dim needed_ = 0;   // numbers
    float* entered_ = nullptr;       // the room, where it was
};

}  // namespace understudy
