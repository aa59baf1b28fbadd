#include "denoise/network_steps.h"

#include <algorithm>
#include <optional>

#include <omp.h>

namespace understudy {

namespace {

using dnnl::memory;
using Tag = memory::format_tag;
using ConvolutionKind = dnnl::convolution_forward::primitive_desc;

constexpr int kKernel = 3;
constexpr int kBlock = 16;  // a multiple of every processor's

int whole_blocks(int channels) { return (channels + kBlock - 1) / kBlock * kBlock; }

memory::desc described(const memory::dims& sizes, Tag tag) { return {sizes, memory::data_type::f32, tag}; }

memory::dims sizes_of(const Level& level) { return {1, whole_blocks(level.channels), level.height, level.width}; }

memory::dim count_of(const Level& level) {
    return memory::dim{whole_blocks(level.channels)} * level.height * level.width;
}

float* values_of(const memory& held) { return static_cast<float*>(held.get_data_handle()); }

float* values_of(const Level& level) { return level.place->numbers; }

// None where the library has no such convolution for this processor.
std::optional<ConvolutionKind> kind_of(const dnnl::engine& engine, dnnl::algorithm algorithm, Tag tag,
                                       const memory::dims& from, const memory::dims& to,
                                       const dnnl::primitive_attr& attributes) {
    const dnnl::convolution_forward::desc what(dnnl::prop_kind::forward_inference, algorithm, described(from, tag),
                                               described({to[1], from[1], kKernel, kKernel}, Tag::any),
                                               described({to[1]}, Tag::x), described(to, tag), {1, 1}, {1, 1}, {1, 1});
    const ConvolutionKind kind(what, attributes, engine, true);
    if (kind.get(true) == nullptr) return std::nullopt;
    return kind;
}

// Plain planes, as far as they are gone over: rows of some that have more.
memory::desc some_rows(const Level& of, int rows, int plane_height) {
    const memory::dim plane = memory::dim{plane_height} * of.width;
    return {{1, of.channels, rows, of.width},
            memory::data_type::f32,
            memory::dims{of.channels * plane, plane, of.width, 1}};
}

}  // namespace

const memory& NetworkRoom::weights_of(const Convolution& convolution, int first, int count,
                                      const memory::desc& wanted) {
    for (const LaidOut& known : laid_out_) {
        if (known.convolution == &convolution && known.first == first && known.weights.get_desc() == wanted) {
            return known.weights;
        }
    }
    constexpr std::ptrdiff_t kPlaces = std::ptrdiff_t{kKernel} * kKernel;
    const std::ptrdiff_t out = whole_blocks(convolution.out);
    const std::ptrdiff_t in = whole_blocks(count);
    memory plain(described({out, in, kKernel, kKernel}, Tag::oihw), engine);
    float* to = values_of(plain);
    std::fill_n(to, out * in * kPlaces, 0.0F);
    for (std::ptrdiff_t o = 0; o < convolution.out; ++o) {
        const auto from = convolution.weights.begin() + (o * convolution.in + first) * kPlaces;
        std::copy_n(from, count * kPlaces, to + o * in * kPlaces);
    }
    memory laid_out(wanted, engine);
    dnnl::reorder(plain, laid_out).execute(stream, plain, laid_out);
    stream.wait();
    return laid_out_.emplace_back(LaidOut{&convolution, first, laid_out}).weights;
}

float* NetworkRoom::numbers(memory::dim count) {
    if (!numbers_ || numbers_.get_desc().dims()[0] < count) {
        numbers_ = memory();  // before the next
        numbers_ = memory(described({count}, Tag::x), engine);
    }
    return values_of(numbers_);
}

NetworkSteps::NetworkSteps(NetworkRoom& room) : room_(room) {
    omp_set_num_threads(omp_get_num_procs());
    const memory::dims probe{1, kBlock, kBlock, kBlock};
    if (kind_of(room_.engine, dnnl::algorithm::convolution_winograd, Tag::nChw16c, probe, probe, attributes_of({}))) {
        tag_ = Tag::nChw16c;
    }
    for (LevelPlace*& turn : turns_) turn = places_.emplace_back(new LevelPlace).get();
    scratch_ = places_.emplace_back(new LevelPlace).get();
}

// ---- memory ----

Level NetworkSteps::in_own_place(int channels, int width, int height) {
    const Level level{places_.emplace_back(new LevelPlace).get(), channels, width, height};
    level.place->largest = count_of(level);
    return level;
}

// Levels that only the next step needs take turns in two places.
Level NetworkSteps::in_turn(const Level& source, int channels, int width, int height) {
    const Level level{turns_.at(source.place == turns_[0] ? 1 : 0), channels, width, height};
    level.place->largest = std::max(level.place->largest, count_of(level));
    return level;
}

memory NetworkSteps::held(const Level& level) {
    return level.place->held.emplace_back(described(sizes_of(level), tag_), room_.engine, nullptr);
}

void NetworkSteps::close() {
    constexpr memory::dim kApart = 1024;  // a page
    for (const auto& place : places_) {
        place->first = needed_;
        needed_ += (place->largest + kApart - 1) / kApart * kApart;
    }
}

void NetworkSteps::enter_room() {
    omp_set_num_threads(omp_get_num_procs());
    float* room = room_.numbers(needed_);
    if (room == entered_) return;
    entered_ = room;
    for (const auto& place : places_) {
        place->numbers = room + place->first;
        for (memory& held : place->held) held.set_data_handle(place->numbers);
    }
}

// ---- convolutions ----

dnnl::primitive_attr NetworkSteps::attributes_of(const Part& part) {
    dnnl::post_ops then;
    if (part.is_added) then.append_sum(1.0F);
    if (part.is_last) then.append_eltwise(1.0F, dnnl::algorithm::eltwise_relu, 0.0F, 0.0F);
    dnnl::primitive_attr attributes;
    attributes.set_post_ops(then);
    attributes.set_scratchpad_mode(dnnl::scratchpad_mode::user);
    return attributes;
}

// Winograd's where the processor and the size allow it.
ConvolutionKind NetworkSteps::quickest(const Level& from, const Level& to, const Part& part) const {
    const auto by = [&](dnnl::algorithm algorithm) {
        return kind_of(room_.engine, algorithm, tag_, sizes_of(from), sizes_of(to), attributes_of(part));
    };
    const auto winograd = by(dnnl::algorithm::convolution_winograd);
    return winograd ? *winograd : *by(dnnl::algorithm::convolution_direct);
}

memory NetworkSteps::biases_of(const Convolution& convolution, const Part& part) const {
    const int out = whole_blocks(convolution.out);
    memory biases(described({out}, Tag::x), room_.engine);
    std::fill_n(values_of(biases), out, 0.0F);
    if (!part.is_added) std::copy(convolution.biases.begin(), convolution.biases.end(), values_of(biases));
    return biases;
}

void NetworkSteps::add_convolution(const Level& from, const Level& to, const Convolution& convolution,
                                   const Part& part) {
    const ConvolutionKind kind = quickest(from, to, part);
    const auto scratch_numbers = static_cast<memory::dim>(kind.scratchpad_desc().get_size() / sizeof(float)) + 1;
    scratch_->largest = std::max(scratch_->largest, scratch_numbers);
    const memory& scratch = scratch_->held.emplace_back(kind.scratchpad_desc(), room_.engine, nullptr);
    steps_.push_back({dnnl::convolution_forward(kind),
                      {{DNNL_ARG_SRC, held(from)},
                       {DNNL_ARG_WEIGHTS, room_.weights_of(convolution, part.first, part.count, kind.weights_desc())},
                       {DNNL_ARG_BIAS, biases_of(convolution, part)},
                       {DNNL_ARG_DST, held(to)},
                       {DNNL_ARG_SCRATCHPAD, scratch}}});
}

Level NetworkSteps::convolved(const Level& from, const Convolution& convolution) {
    const Level to = in_turn(from, convolution.out, from.width, from.height);
    convolve(from, convolution, to);
    return to;
}

void NetworkSteps::convolve(const Level& from, const Convolution& convolution, const Level& to) {
    add_convolution(from, to, convolution, {0, convolution.in});
}

Level NetworkSteps::convolved(const Level& first, const Level& second, const Convolution& convolution) {
    const Level to = in_turn(first, convolution.out, first.width, first.height);
    add_convolution(first, to, convolution, {0, first.channels, false, false});
    add_convolution(second, to, convolution, {first.channels, second.channels, true, true});
    return to;
}

// ---- other sizes ----

Level NetworkSteps::halved(const Level& from) {
    const Level to = in_own_place(from.channels, from.width / 2, from.height / 2);
    const dnnl::pooling_forward::desc what(dnnl::prop_kind::forward_inference, dnnl::algorithm::pooling_max,
                                           described(sizes_of(from), tag_), described(sizes_of(to), tag_), {2, 2},
                                           {2, 2}, {0, 0}, {0, 0});
    steps_.push_back(
        {dnnl::pooling_forward({what, room_.engine}), {{DNNL_ARG_SRC, held(from)}, {DNNL_ARG_DST, held(to)}}});
    return to;
}

Level NetworkSteps::doubled(const Level& from) {
    const Level to = in_turn(from, from.channels, 2 * from.width, 2 * from.height);
    const dnnl::resampling_forward::desc what(dnnl::prop_kind::forward_inference, dnnl::algorithm::resampling_nearest,
                                              described(sizes_of(from), tag_), described(sizes_of(to), tag_));
    steps_.push_back(
        {dnnl::resampling_forward({what, room_.engine}), {{DNNL_ARG_SRC, held(from)}, {DNNL_ARG_DST, held(to)}}});
    return to;
}

// ---- running ----

void NetworkSteps::run(std::size_t first, std::size_t end) {
    for (std::size_t i = first; i < end; ++i) steps_[i].first.execute(room_.stream, steps_[i].second);
    room_.stream.wait();
}

std::ptrdiff_t NetworkSteps::row_of_block(const Level& level) const {
    return static_cast<std::ptrdiff_t>(level.width) * (tag_ == Tag::nChw16c ? 16 : 8);
}

void NetworkSteps::put(const float* planes, int plane_height, int first_row, const Level& to) {
    const auto from_row = static_cast<std::ptrdiff_t>(first_row) * to.width;
    memory plain(some_rows(to, to.height, plane_height), room_.engine, const_cast<float*>(planes) + from_row);
    memory blocks(described({1, to.channels, to.height, to.width}, tag_), room_.engine, values_of(to));
    dnnl::reorder(plain, blocks).execute(room_.stream, plain, blocks);
    room_.stream.wait();
}

void NetworkSteps::get(const Level& from, int first_row, int rows, float* planes, int plane_height, int to_row) {
    float* values = values_of(from) + first_row * row_of_block(from);
    memory blocks(described({1, from.channels, rows, from.width}, tag_), room_.engine, values);
    memory plain(some_rows(from, rows, plane_height), room_.engine,
                 planes + static_cast<std::ptrdiff_t>(to_row) * from.width);
    dnnl::reorder(blocks, plain).execute(room_.stream, blocks, plain);
    room_.stream.wait();
}

void NetworkSteps::copy_rows(const Level& from, int first_row, int rows, const Level& to, int to_row) const {
    const std::ptrdiff_t row = row_of_block(from);
    const std::ptrdiff_t blocks = count_of(from) / (row * from.height);
    for (std::ptrdiff_t b = 0; b < blocks; ++b) {
        std::copy_n(values_of(from) + (b * from.height + first_row) * row, rows * row,
                    values_of(to) + (b * to.height + to_row) * row);
    }
}

}  // namespace understudy
