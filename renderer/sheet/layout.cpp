#include "sheet/layout.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace understudy {
namespace {

constexpr int kMargin = 40;
constexpr int kGutter = 28;  // between columns, and between rows twice
constexpr int kGap = 12;     // between a picture and what stands over or under it
constexpr int kLineGap = 5;
constexpr int kLabelWidth = 350;
constexpr int kWidestCell = 480;
constexpr int kFrameRoom = 8;  // round a picture, for its mark's frame
// Capitals of 22 pixels on a sheet of 2000: DejaVu Sans's are 0.729 em high. On a laptop's screen, 30 cm wide and an
// arm's length away (60 cm), that is 19 minutes of arc, nearly four times what the eye can just read (5 minutes a
// letter are 6/6 vision; ISO 9241-303 asks for 16 and better 20 to 22; from memory).
constexpr Lettering kPlain{31.0, false};
constexpr Lettering kCellTitle{31.0, true};
constexpr Lettering kSheetTitle{42.0, true};

class Layouter {
  public:
    explicit Layouter(const ContactSheet& sheet)
        : sheet_(sheet), labelled_(!sheet.labels.empty()), cell_(cell_width(sheet.columns, labelled_)) {
        first_x_ = kMargin + (labelled_ ? kLabelWidth + kGutter : 0);
        layout_.width = first_x_ + sheet.columns * cell_ + (sheet.columns - 1) * kGutter + kMargin;
    }

    SheetLayout laid_out() {
        const int wide = layout_.width - 2 * kMargin;
        int y = kMargin;
        y += put_text(sheet_.title, kSheetTitle, kMargin, y, wide) + kLineGap;
        if (!sheet_.note.empty()) y += put_text(sheet_.note, kPlain, kMargin, y, wide);
        y += kGutter;
        const auto columns = static_cast<std::size_t>(sheet_.columns);
        for (std::size_t first = 0; first < sheet_.cells.size(); first += columns) {
            y = put_row(first, std::min(first + columns, sheet_.cells.size()), y) + 2 * kGutter;
        }
        layout_.height = y - 2 * kGutter + kMargin;
        return std::move(layout_);
    }

  private:
    int x_of(std::size_t cell) const {
        return first_x_ + static_cast<int>(cell % static_cast<std::size_t>(sheet_.columns)) * (cell_ + kGutter);
    }

    // The height that it took.
    int put_text(const std::string& text, const Lettering& lettering, int x, int y, int width, bool reversed = false) {
        const auto block = std::make_shared<const TextBlock>(text, lettering, width);
        if (!text.empty()) layout_.texts.push_back({{x, y, block->width(), block->height()}, block, reversed});
        return block->height();
    }

    static int title_height(const SheetCell& cell, int width) {
        return TextBlock(cell.title, kCellTitle, width).height();
    }

    // Cells from first to the one before last, their tops at y. Back comes where the row ends.
    int put_row(std::size_t first, std::size_t last, int y) {
        int titles = 0;
        for (std::size_t i = first; i < last; ++i) titles = std::max(titles, title_height(sheet_.cells[i], cell_));
        for (std::size_t i = first; i < last; ++i) {
            // Titles of one line stand at the pictures, not high over them.
            const int lower = titles - title_height(sheet_.cells[i], cell_);
            put_text(sheet_.cells[i].title, kCellTitle, x_of(i), y + lower, cell_);
        }
        y += titles + kGap;
        int end = y;
        for (std::size_t i = first; i < last; ++i) end = std::max(end, put_pictures(sheet_.cells[i], x_of(i), y));
        return put_lines(first, last, end + kGap);
    }

    int put_pictures(const SheetCell& cell, int x, int y) {
        const int top = y;
        y += put_picture(cell.picture, x, y);
        int inset_x = x;
        int tallest = 0;
        for (const DisplayPicture& inset : cell.insets) {
            if (tallest == 0) y += kLineGap;
            tallest = std::max(tallest, put_picture(inset, inset_x, y));
            inset_x += inset.width + kLineGap;
        }
        y += tallest;
        if (cell.mark.empty()) return y;
        layout_.frames.push_back(
            {x - kFrameRoom, top - kFrameRoom, cell.picture.width + 2 * kFrameRoom, y - top + 2 * kFrameRoom});
        y += kFrameRoom + kGap;
        return y + put_text(cell.mark, kCellTitle, x, y, cell_, true);
    }

    int put_picture(const DisplayPicture& picture, int x, int y) {
        layout_.pictures.push_back({{x, y, picture.width, picture.height}, &picture});
        return picture.height;
    }

    // Line by line over the whole row, so that what belongs together stays on one height.
    int put_lines(std::size_t first, std::size_t last, int y) {
        std::size_t count = sheet_.labels.size();
        for (std::size_t i = first; i < last; ++i) count = std::max(count, sheet_.cells[i].lines.size());
        for (std::size_t line = 0; line < count; ++line) {
            int tallest = 0;
            if (line < sheet_.labels.size()) {
                tallest = put_text(sheet_.labels[line], kPlain, kMargin, y, kLabelWidth);
            }
            for (std::size_t i = first; i < last; ++i) {
                const SheetCell& cell = sheet_.cells[i];
                if (line >= cell.lines.size()) continue;
                tallest = std::max(tallest, put_text(cell.lines[line], kPlain, x_of(i), y, cell_));
            }
            y += tallest + kLineGap;
        }
        return y;
    }

    const ContactSheet& sheet_;
    bool labelled_;
    int cell_;
    int first_x_ = 0;
    SheetLayout layout_;
};

}  // namespace

int cell_width(int columns, bool labelled) {
    assert(columns > 0);
    const int for_labels = labelled ? kLabelWidth + kGutter : 0;
    const int free = kSheetWidth - 2 * kMargin - for_labels - (columns - 1) * kGutter;
    return std::min(kWidestCell, free / columns);
}

SheetLayout lay_out(const ContactSheet& sheet) { return Layouter(sheet).laid_out(); }

}  // namespace understudy
