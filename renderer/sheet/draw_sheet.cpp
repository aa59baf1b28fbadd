#include <algorithm>
#include <cstdint>
#include <cstring>
#include <memory>

#include "sheet/layout.h"

namespace understudy {
namespace {

// Round photographs a surround that is neutral and of middle lightness, L* = 50, neither makes them look darker nor
// lighter; ISO 3664:2009 asks for a neutral one between 10 and 60 % of reflectance round prints. Black letters on it
// have a contrast of 4.6 to 1.
constexpr double kSurround = 119.0 / 255.0;
constexpr double kFrameWidth = 6.0;
constexpr double kDash = 18.0;

struct DestroySurface {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct DestroyDrawing {
    void operator()(cairo_t* drawing) const { cairo_destroy(drawing); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroySurface>;
using Drawing = std::unique_ptr<cairo_t, DestroyDrawing>;

// Dashes of white on black: seen on dark and on light pictures, and on any printer.
void draw_frame(cairo_t* drawing, const Box& box) {
    cairo_rectangle(drawing, box.x + 0.5 * kFrameWidth, box.y + 0.5 * kFrameWidth, box.width - kFrameWidth,
                    box.height - kFrameWidth);
    cairo_set_line_width(drawing, kFrameWidth);
    cairo_set_source_rgb(drawing, 0.0, 0.0, 0.0);
    cairo_stroke_preserve(drawing);
    cairo_set_source_rgb(drawing, 1.0, 1.0, 1.0);
    cairo_set_dash(drawing, &kDash, 1, 0.0);
    cairo_stroke(drawing);
    cairo_set_dash(drawing, nullptr, 0, 0.0);
}

void draw_text(cairo_t* drawing, const PlacedText& text) {
    if (text.reversed) {
        cairo_set_source_rgb(drawing, 0.0, 0.0, 0.0);
        cairo_rectangle(drawing, text.box.x, text.box.y, text.box.width, text.box.height);
        cairo_fill(drawing);
    }
    text.block->draw(drawing, text.box.x, text.box.y, text.reversed);
}

// Cairo's pixels are 32-bit words, red above green above blue.
DisplayPicture picture_of(cairo_surface_t* surface) {
    cairo_surface_flush(surface);
    DisplayPicture picture;
    picture.width = cairo_image_surface_get_width(surface);
    picture.height = cairo_image_surface_get_height(surface);
    const unsigned char* data = cairo_image_surface_get_data(surface);
    const int stride = cairo_image_surface_get_stride(surface);
    picture.pixels.reserve(static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            std::uint32_t word = 0;
            std::memcpy(&word, data + static_cast<std::ptrdiff_t>(y) * stride + 4L * x, sizeof word);
            picture.pixels.push_back({static_cast<std::uint8_t>(word >> 16), static_cast<std::uint8_t>(word >> 8),
                                      static_cast<std::uint8_t>(word)});
        }
    }
    return picture;
}

// Pixel for pixel.
void paste(DisplayPicture& sheet, const PlacedPicture& placed) {
    const DisplayPicture& picture = *placed.picture;
    for (int y = 0; y < picture.height; ++y) {
        const auto from = picture.pixels.begin() + static_cast<std::ptrdiff_t>(y) * picture.width;
        const std::ptrdiff_t to = static_cast<std::ptrdiff_t>(placed.box.y + y) * sheet.width + placed.box.x;
        std::copy(from, from + picture.width, sheet.pixels.begin() + to);
    }
}

}  // namespace

Expected<Done> check_fonts() {
    if (has_fonts()) return Done{};
    return Problem{Blame::kFailed,
                   "the sheet's words cannot be drawn: this machine has no font; expected one such "
                   "as DejaVu Sans (package fonts-dejavu-core)"};
}

Expected<DisplayPicture> draw_sheet(const ContactSheet& sheet) {
    if (const auto fonts = check_fonts(); !fonts) return fonts.problems();
    const SheetLayout layout = lay_out(sheet);
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, layout.width, layout.height));
    const Drawing drawing(cairo_create(surface.get()));
    cairo_set_source_rgb(drawing.get(), kSurround, kSurround, kSurround);
    cairo_paint(drawing.get());
    for (const Box& frame : layout.frames) draw_frame(drawing.get(), frame);
    for (const PlacedText& text : layout.texts) draw_text(drawing.get(), text);
    if (const cairo_status_t status = cairo_status(drawing.get()); status != CAIRO_STATUS_SUCCESS) {
        return Problem{Blame::kFailed, std::string("the sheet cannot be drawn: ") + cairo_status_to_string(status)};
    }
    DisplayPicture picture = picture_of(surface.get());
    for (const PlacedPicture& placed : layout.pictures) paste(picture, placed);
    return picture;
}

}  // namespace understudy
