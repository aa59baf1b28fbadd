// Text set in lines, by Pango: shaping, line breaking and fonts for whatever alphabet a name is written in.
#pragma once

#include <memory>
#include <string>

#include <pango/pangocairo.h>

namespace understudy {

struct Lettering {
    double size = 0.0;  // of the em, pixels
    bool bold = false;
};

// A paragraph no wider than so many pixels. It is broken between words; a word that is wider than the line by itself is
// set smaller, down to a limit, and broken only then.
class TextBlock {
  public:
    TextBlock(const std::string& utf8, const Lettering& lettering, int width);

    int height() const { return height_; }  // of its lines, pixels
    int width() const { return width_; }    // of its longest line

    // Black, its top left corner there; white on a black ground for words that are to stand out.
    void draw(cairo_t* on, double x, double y, bool reversed = false) const;

  private:
    struct Release {
        void operator()(PangoLayout* layout) const { g_object_unref(layout); }
    };
    std::unique_ptr<PangoLayout, Release> layout_;
    int width_ = 0;
    int height_ = 0;
};

// Whether there is any font to set text in: without one Pango tells of letters of no size or of an impossible one.
bool has_fonts();

}  // namespace understudy
