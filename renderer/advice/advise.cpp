#include "advice/advise.h"

#include <tbb/parallel_for.h>
#include <tbb/parallel_invoke.h>

#include "advice/cut_offs.h"
#include "advice/fix_search.h"
#include "advice/setup_look.h"
#include "advice/sitter_ways.h"
#include "advice/stand_ways.h"

namespace understudy {

namespace {

// The same light on another face of the same head: its eyes deeper set, or more prominent.
struct OtherFace {
    const char* called;
    double eye_set;
};
constexpr std::array<OtherFace, 2> kOtherFaces{OtherFace{"deep-set eyes", -1.0}, OtherFace{"prominent eyes", 1.0}};

Setup with_eyes_set(const Setup& setup, double amount) {
    Setup other = setup;
    other.sitter.face.of(FaceFeature::kEyeSet) = amount;
    other.sitter.clothes.outfit = Outfit::kBareShoulders;  // they take long to put on, and shade no eye
    return other;
}

// What each thread of the search finds, in a room of its own.
struct Part {
    Problems problems{};
    std::optional<TrialRoom> room{};
    std::vector<FoundFix> fixes{};
    HeightCutOff heights{};

    bool open(const Setup& setup, const Library& library, const HeadPointer& head) {
        auto opened = TrialRoom::open(setup, library, head);
        if (!opened) {
            problems = opened.problems();
            return false;
        }
        room.emplace(std::move(*opened));
        return true;
    }
};

class Search {
  public:
    Search(const Setup& setup, const Library& library, HeadPointer head)
        : setup_(setup), library_(library), head_(std::move(head)) {
        advice_.scene = setup.file.string();
        advice_.title = setup.title;
        advice_.key = setup.lights.front().name;
    }

    Expected<Advice> run() {
        tbb::parallel_invoke([&] { try_stands(); }, [&] { try_sitter(); }, [&] { try_face(faces_[0], kOtherFaces[0]); },
                             [&] { try_face(faces_[1], kOtherFaces[1]); });
        for (const Part* part : {&stands_, &sitter_, &faces_[0], &faces_[1]}) {
            if (!part->problems.empty()) return part->problems;
        }
        std::vector<FoundFix> fixes = std::move(sitter_.fixes);
        for (FoundFix& fix : stands_.fixes) fixes.push_back(std::move(fix));
        advice_.heights.push_back(stands_.heights);
        tbb::parallel_for(std::size_t{0}, kOtherFaces.size(), [&](std::size_t f) { try_on(f, fixes); });
        for (std::size_t f = 0; f < kOtherFaces.size(); ++f) {
            if (!faces_.at(f).room) continue;
            advice_.heights.push_back(faces_.at(f).heights);
            for (std::size_t i = 0; i < fixes.size(); ++i) fixes[i].fix.faces.push_back(on_faces_.at(f)[i]);
        }
        for (const FoundFix& found : fixes) advice_.fixes.push_back(found.fix);
        return advice_;
    }

  private:
    void try_stands() {
        if (!stands_.open(setup_, library_, head_)) return;
        TrialRoom& room = *stands_.room;
        advice_.key_height_m = room.studio().lights.front().centre.y;
        advice_.now = look_of(room);
        if (!advice_.now.eyes.both_alive()) stands_.fixes = find_fixes(room, stand_ways(room, library_.kit));
        stands_.heights = height_cut_off(room, "as set");
        advice_.turns = turn_cut_off(room);
    }

    void try_sitter() {
        if (!sitter_.open(setup_, library_, head_)) return;
        TrialRoom& room = *sitter_.room;
        if (!both_alive(room)) sitter_.fixes = find_fixes(room, sitter_ways(room));
    }

    void try_face(Part& part, const OtherFace& face) {
        if (!std::holds_alternative<LibraryHead>(setup_.sitter.head)) return;
        const Setup other = with_eyes_set(setup_, face.eye_set);
        const auto head = load_head(other.sitter, library_);
        if (!head) {
            part.problems = head.problems();
            return;
        }
        if (part.open(other, library_, *head)) part.heights = height_cut_off(*part.room, face.called);
    }

    void try_on(std::size_t f, const std::vector<FoundFix>& fixes) {
        if (!faces_.at(f).room) return;
        for (const FoundFix& found : fixes) {
            on_faces_.at(f).push_back(on_face(*faces_.at(f).room, kOtherFaces.at(f).called, found));
        }
    }

    const Setup& setup_;
    const Library& library_;
    HeadPointer head_;
    Advice advice_;
    Part stands_;
    Part sitter_;
    std::array<Part, 2> faces_;
    std::array<std::vector<OnFace>, 2> on_faces_;
};

}  // namespace

Expected<Advice> advise(const Setup& setup, const Library& library) {
    const auto head = load_sighted_head(setup, library);
    if (!head) return head.problems();
    return Search(setup, library, *head).run();
}

}  // namespace understudy
