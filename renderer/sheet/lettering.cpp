#include "sheet/lettering.h"

#include <fontconfig/fontconfig.h>
#include <algorithm>
#include <cmath>

namespace understudy {
namespace {

// The second name is whatever the machine has instead.
constexpr const char* kFamilies = "DejaVu Sans, Sans";
constexpr double kSmallest = 0.7;  // of the size asked for, before a word is broken
constexpr double kStep = 0.95;

template <class Object>
struct Unref {
    void operator()(Object* object) const { g_object_unref(object); }
};
template <class Object>
using Owned = std::unique_ptr<Object, Unref<Object>>;

struct FreeFont {
    void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
struct FreeOptions {
    void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

// Grey edges, because coloured ones would tint a neutral sheet; places and widths of letters as they are drawn, not
// moved to whole pixels, so that text is as wide as it was measured.
PangoLayout* new_layout() {
    const Owned<PangoContext> context(pango_font_map_create_context(pango_cairo_font_map_get_default()));
    const std::unique_ptr<cairo_font_options_t, FreeOptions> options(cairo_font_options_create());
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_SLIGHT);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(context.get(), options.get());
    return pango_layout_new(context.get());
}

std::string valid_utf8(const std::string& text) {
    gchar* valid = g_utf8_make_valid(text.data(), static_cast<gssize>(text.size()));
    std::string result = valid;
    g_free(valid);
    return result;
}

void set_font(PangoLayout* layout, const Lettering& lettering) {
    const std::unique_ptr<PangoFontDescription, FreeFont> font(pango_font_description_from_string(kFamilies));
    pango_font_description_set_absolute_size(font.get(), lettering.size * PANGO_SCALE);
    pango_font_description_set_weight(font.get(), lettering.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout, font.get());
}

// Whether a line had to be broken inside a word.
bool breaks_a_word(PangoLayout* layout) {
    const int width = pango_layout_get_width(layout);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD);
    PangoRectangle logical;
    pango_layout_get_extents(layout, nullptr, &logical);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    return logical.width > width;
}

}  // namespace

TextBlock::TextBlock(const std::string& utf8, const Lettering& lettering, int width) : layout_(new_layout()) {
    PangoLayout* layout = layout_.get();
    const std::string text = valid_utf8(utf8);
    pango_layout_set_text(layout, text.data(), static_cast<int>(text.size()));
    pango_layout_set_width(layout, width * PANGO_SCALE);
    Lettering fitting = lettering;
    set_font(layout, fitting);
    while (fitting.size * kStep >= kSmallest * lettering.size && breaks_a_word(layout)) {
        fitting.size *= kStep;
        set_font(layout, fitting);
    }
    PangoRectangle logical;
    pango_layout_get_extents(layout, nullptr, &logical);
    width_ = static_cast<int>(std::ceil(static_cast<double>(logical.width) / PANGO_SCALE));
    height_ = static_cast<int>(std::ceil(static_cast<double>(logical.height) / PANGO_SCALE));
}

void TextBlock::draw(cairo_t* on, double x, double y, bool reversed) const {
    const double grey = reversed ? 1.0 : 0.0;
    cairo_set_source_rgb(on, grey, grey, grey);
    cairo_move_to(on, x, y);
    pango_cairo_show_layout(on, layout_.get());
}

bool has_fonts() {
    FcPattern* any = FcPatternCreate();
    FcObjectSet* asked = FcObjectSetBuild(FC_FAMILY, nullptr);
    FcFontSet* found = FcFontList(nullptr, any, asked);
    const bool some = found != nullptr && found->nfont > 0;
    if (found != nullptr) FcFontSetDestroy(found);
    FcObjectSetDestroy(asked);
    FcPatternDestroy(any);
    return some;
}

}  // namespace understudy
