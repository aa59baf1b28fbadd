// What slow questions about the sitter were answered, for when the same rays come again: paths from the camera choose
// their way without regard to the lights, so when only a light moves they find it here.
//
// An answer holds for a ray of the very same numbers and as long as the sitter stays as it is; rays that a moved thing
// sends elsewhere are simply not found. One memory is used by one thread at a time.
#pragma once

#include <algorithm>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include "base/geometry.h"
#include "scatter/skin_walk.h"
#include "stage/flesh.h"
#include "stage/strand_grid.h"

namespace understudy {

// Of a ray's or a walk's numbers; that two in a tile have the same by chance is less likely than that memory fails.
class MemoryKey {
  public:
    MemoryKey& with(const Vec3& v) { return with(v.x, v.y).with(v.z, 0.0F); }
    MemoryKey& with(const Vec4& v) { return with(v.x, v.y).with(v.z, v.w); }
    MemoryKey& with(float a, float b) {
        const std::uint64_t both = static_cast<std::uint64_t>(std::bit_cast<std::uint32_t>(a)) << 32U |
                                   static_cast<std::uint64_t>(std::bit_cast<std::uint32_t>(b));
        // The finaliser of D. Stafford's "Mix13", as in the splitmix generator of Steele, Lea and Flood, 2014.
        std::uint64_t x = value_ + 0x9e3779b97f4a7c15U + both;
        x = (x ^ x >> 30U) * 0xbf58476d1ce4e5b9U;
        x = (x ^ x >> 27U) * 0x94d049bb133111ebU;
        value_ = x ^ x >> 31U;
        return *this;
    }
    std::uint64_t value() const { return value_; }

  private:
    std::uint64_t value_ = 0;
};

inline MemoryKey key_of(const Ray& ray) { return MemoryKey().with(ray.origin).with(ray.direction); }

// Answers by their keys; open addressing over their numbers. What comes when there are kMost is not kept.
template <class Answer>
class AnswerTable {
  public:
    static constexpr std::size_t kMost = 0xffff;
    const Answer* find(const MemoryKey& key) const {
        if (answers_.empty()) return nullptr;
        for (std::size_t at = key.value() & mask();; at = (at + 1) & mask()) {
            if (slots_[at] == kFree) return nullptr;
            if (answers_[slots_[at]].first == key.value()) return &answers_[slots_[at]].second;
        }
    }
    // In place of what was there.
    void keep(const MemoryKey& key, const Answer& answer) {
        if (answers_.size() == kMost) return;
        if (2 * answers_.size() >= slots_.size()) widen();
        std::size_t at = key.value() & mask();
        while (slots_[at] != kFree && answers_[slots_[at]].first != key.value()) at = (at + 1) & mask();
        if (slots_[at] != kFree) {
            answers_[slots_[at]].second = answer;
            return;
        }
        slots_[at] = static_cast<std::uint16_t>(answers_.size());
        answers_.emplace_back(key.value(), answer);
    }
    void shrink() { answers_.shrink_to_fit(); }
    std::size_t bytes() const {
        return slots_.capacity() * sizeof(slots_[0]) + answers_.capacity() * sizeof(answers_[0]);
    }

  private:
    static constexpr std::uint16_t kFree = 0xffff;
    std::size_t mask() const { return slots_.size() - 1; }
    void widen() {
        slots_.assign(std::max<std::size_t>(64, 2 * slots_.size()), kFree);
        for (std::size_t i = 0; i < answers_.size(); ++i) {
            std::size_t at = answers_[i].first & mask();
            while (slots_[at] != kFree) at = (at + 1) & mask();
            slots_[at] = static_cast<std::uint16_t>(i);
        }
    }

    std::vector<std::uint16_t> slots_;  // a power of two
    std::vector<std::pair<std::uint64_t, Answer>> answers_;
};

using SkinWalkResult = WalkResult<Flesh::Wall>;

class RayMemory {
  public:
    // New answers are kept until it is told otherwise.
    void stop_learning() {
        learns_ = false;
        strands_.shrink();
        walks_.shrink();
    }
    std::size_t bytes() const { return strands_.bytes() + walks_.bytes(); }

    // ask(): the answer, when it is not known. The mesh is not asked here: its tree answers about as quickly.
    template <class Ask>
    StrandMeeting strand(const Ray& ray, const Ask& ask) {
        const MemoryKey key = key_of(ray);
        if (const KnownStrand* known = strands_.find(key)) {
            if (known->nearest.distance < ray.far) return known->nearest;
            // Nothing so near, as far as it was looked for.
            if (ray.far <= known->asked_to || known->nearest.distance < kInfinity) return {};
        }
        const StrandMeeting answer = ask();
        if (learns_) strands_.keep(key, {ray.far, answer});
        return answer;
    }
    // A walk is known by where it starts and by its numbers.
    template <class Ask>
    SkinWalkResult walk(const MemoryKey& key, const Ask& ask) {
        if (const SkinWalkResult* known = walks_.find(key)) return *known;
        const SkinWalkResult answer = ask();
        if (learns_) walks_.keep(key, answer);
        return answer;
    }

  private:
    struct KnownStrand {
        float asked_to = 0.0F;  // how far along the ray
        StrandMeeting nearest;
    };

    bool learns_ = true;
    AnswerTable<KnownStrand> strands_;
    AnswerTable<SkinWalkResult> walks_;
};

}  // namespace understudy
