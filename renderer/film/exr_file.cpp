#include "film/exr_file.h"

#include <cstring>
#include <exception>
#include <thread>

#include <OpenEXR/ImfChannelList.h>
#include <OpenEXR/ImfFloatAttribute.h>
#include <OpenEXR/ImfFrameBuffer.h>
#include <OpenEXR/ImfHeader.h>
#include <OpenEXR/ImfIO.h>
#include <OpenEXR/ImfInputPart.h>
#include <OpenEXR/ImfIntAttribute.h>
#include <OpenEXR/ImfMultiPartInputFile.h>
#include <OpenEXR/ImfMultiPartOutputFile.h>
#include <OpenEXR/ImfOutputPart.h>
#include <OpenEXR/ImfPartType.h>
#include <OpenEXR/ImfStringAttribute.h>
#include <OpenEXR/ImfThreading.h>
#include <half.h>

#include "film/pending_file.h"

namespace understudy {
namespace {

// Into memory: what the disk refuses is then told in one place.
class Memory : public Imf::OStream {
  public:
    Memory() : OStream("memory") {}

    void write(const char* from, int count) override {
        const auto length = static_cast<std::size_t>(count);
        if (at_ + length > bytes_.size()) bytes_.resize(at_ + length);
        std::memcpy(bytes_.data() + at_, from, length);
        at_ += length;
    }
    std::uint64_t tellp() override { return at_; }
    void seekp(std::uint64_t at) override { at_ = at; }
    std::vector<unsigned char> taken() { return std::move(bytes_); }

  private:
    std::vector<unsigned char> bytes_;
    std::size_t at_ = 0;
};

// Packing takes most of the time, and goes on as many threads as there are.
void use_threads() {
    static const bool once = [] {
        Imf::setGlobalThreadCount(static_cast<int>(std::thread::hardware_concurrency()));
        return true;
    }();
    static_cast<void>(once);
}

Imf::Header header_of(const ExrPart& part) {
    Imf::Header header(part.width, part.height);
    header.compression() = Imf::ZIP_COMPRESSION;
    header.setType(Imf::SCANLINEIMAGE);
    if (!part.name.empty()) header.setName(part.name);
    for (const std::string& channel : part.channels) {
        header.channels().insert(channel, Imf::Channel(part.as_half ? Imf::HALF : Imf::FLOAT));
    }
    for (const auto& [key, text] : part.notes.texts) header.insert(key, Imf::StringAttribute(text));
    for (const auto& [key, number] : part.notes.numbers) header.insert(key, Imf::FloatAttribute(number));
    for (const auto& [key, count] : part.notes.counts) header.insert(key, Imf::IntAttribute(count));
    return header;
}

// One slice a channel of pixels that lie side by side.
template <class Number>
Imf::FrameBuffer slices_of(const std::vector<std::string>& channels, Imf::PixelType type, const Number* pixels,
                           int width) {
    Imf::FrameBuffer slices;
    const std::size_t pixel = channels.size() * sizeof(Number);
    for (std::size_t c = 0; c < channels.size(); ++c) {
        // The library writes into it only when it reads a file.
        char* begin = const_cast<char*>(reinterpret_cast<const char*>(pixels + c));
        slices.insert(channels[c], Imf::Slice(type, begin, pixel, pixel * static_cast<std::size_t>(width)));
    }
    return slices;
}

void write_part(Imf::MultiPartOutputFile& file, int index, const ExrPart& part) {
    Imf::OutputPart output(file, index);
    if (!part.as_half) {
        output.setFrameBuffer(slices_of(part.channels, Imf::FLOAT, part.pixels, part.width));
        output.writePixels(part.height);
        return;
    }
    const std::size_t count =
        static_cast<std::size_t>(part.width) * static_cast<std::size_t>(part.height) * part.channels.size();
    const std::vector<half> halves(part.pixels, part.pixels + count);
    output.setFrameBuffer(slices_of(part.channels, Imf::HALF, halves.data(), part.width));
    output.writePixels(part.height);
}

ExrNotes notes_of(const Imf::Header& header) {
    ExrNotes notes;
    for (auto at = header.begin(); at != header.end(); ++at) {
        if (const auto* text = dynamic_cast<const Imf::StringAttribute*>(&at.attribute())) {
            notes.texts[at.name()] = text->value();
        } else if (const auto* number = dynamic_cast<const Imf::FloatAttribute*>(&at.attribute())) {
            notes.numbers[at.name()] = number->value();
        } else if (const auto* count = dynamic_cast<const Imf::IntAttribute*>(&at.attribute())) {
            notes.counts[at.name()] = count->value();
        }
    }
    return notes;
}

ReadExrPart read_part(Imf::MultiPartInputFile& file, int index) {
    const Imf::Header& header = file.header(index);
    const Imath::Box2i& window = header.dataWindow();
    ReadExrPart part;
    part.name = header.hasName() ? header.name() : "";
    part.width = window.max.x - window.min.x + 1;
    part.height = window.max.y - window.min.y + 1;
    part.notes = notes_of(header);
    for (auto at = header.channels().begin(); at != header.channels().end(); ++at) {
        part.channels.emplace_back(at.name());
        part.as_half = part.as_half || at.channel().type != Imf::FLOAT;
    }
    part.pixels.resize(static_cast<std::size_t>(part.width) * static_cast<std::size_t>(part.height) *
                       part.channels.size());
    if (window.min != Imath::V2i(0, 0)) throw std::runtime_error("its pixels do not begin at the top left");
    Imf::InputPart input(file, index);
    input.setFrameBuffer(slices_of(part.channels, Imf::FLOAT, part.pixels.data(), part.width));
    input.readPixels(window.min.y, window.max.y);
    return part;
}

}  // namespace

Expected<std::vector<unsigned char>> encode_exr(const std::filesystem::path& path, const std::vector<ExrPart>& parts) {
    use_threads();
    Memory memory;
    try {
        std::vector<Imf::Header> headers;
        headers.reserve(parts.size());
        for (const ExrPart& part : parts) headers.push_back(header_of(part));
        Imf::MultiPartOutputFile file(memory, headers.data(), static_cast<int>(headers.size()));
        for (std::size_t i = 0; i < parts.size(); ++i) write_part(file, static_cast<int>(i), parts[i]);
    } catch (const std::exception& error) {
        return write_problem(path, error.what());
    }
    return memory.taken();
}

ReadExr read_exr(const std::filesystem::path& path) {
    use_threads();
    ReadExr read;
    try {
        Imf::MultiPartInputFile file(path.c_str());
        for (int i = 0; i < file.parts(); ++i) read.parts.push_back(read_part(file, i));
    } catch (const std::exception& error) {
        read.trouble = error.what();
    }
    return read;
}

}  // namespace understudy
