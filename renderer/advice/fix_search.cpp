#include "advice/fix_search.h"

#include <algorithm>
#include <cmath>

#include "advice/setup_look.h"

namespace understudy {

namespace {

constexpr int kMostNudges = 4;

bool lights_both(TrialRoom& room, const Way& way, double size) { return way.set_up(room, size) && both_alive(room); }

// Rounded up to what can be said, and so also clear of the search's own noise.
double told_size(const Way& way, double size) {
    if (!(way.fine > 0.0)) return size;
    return std::copysign(way.fine * std::ceil(std::abs(size) / way.fine - 1e-9), size);
}

// Of what does and what does not, in this order on the way, the least that does.
double least_between(TrialRoom& room, const Way& way, double does_not, double does) {
    while (way.fine > 0.0 && std::abs(does - does_not) > way.fine) {
        const double middle = 0.5 * (does + does_not);
        (lights_both(room, way, middle) ? does : does_not) = middle;
    }
    return told_size(way, does);
}

std::optional<FoundFix> confirmed(TrialRoom& room, const Way& way, double size) {
    for (int nudge = 0; nudge <= kMostNudges; ++nudge) {
        if (way.set_up(room, size)) {
            const SetupLook look = look_of(room);
            if (look.eyes.both_alive()) {
                FoundFix found{way, size, {}};
                found.fix.kind = way.kind;
                found.fix.thing = way.thing;
                found.fix.look = look;
                way.tell(found.fix, size);
                return found;
            }
        }
        if (!(way.fine > 0.0)) break;
        size += std::copysign(way.fine, size);
    }
    return std::nullopt;
}

std::optional<FoundFix> least_fix(TrialRoom& room, const Way& way) {
    double before = 0.0;
    for (const double size : way.sizes) {
        if (lights_both(room, way, size)) {
            auto found = confirmed(room, way, least_between(room, way, before, size));
            if (found) return found;
        }
        before = size;
    }
    return std::nullopt;
}

}  // namespace

std::vector<FoundFix> find_fixes(TrialRoom& room, const std::vector<Way>& ways) {
    std::vector<FoundFix> fixes;
    for (const Way& way : ways) {
        // Each light's power is a change of its own.
        const auto known = std::find_if(fixes.begin(), fixes.end(), [&](const FoundFix& one) {
            return one.way.kind == way.kind && way.kind != FixKind::kPower;
        });
        if (known != fixes.end() && way.instead) continue;
        auto found = least_fix(room, way);
        if (!found) continue;
        if (known == fixes.end()) {
            fixes.push_back(std::move(*found));
        } else if (std::abs(found->size) < std::abs(known->size)) {
            *known = std::move(*found);
        }
    }
    return fixes;
}

OnFace on_face(TrialRoom& room, const std::string& face, const FoundFix& found) {
    OnFace result{face, true, std::nullopt, 0.0};
    if (lights_both(room, found.way, found.size)) return result;
    result.enough = false;
    if (!(found.way.fine > 0.0)) return result;
    double before = found.size;
    for (const double times : {1.25, 1.5, 2.0}) {
        const double size = times * found.size;
        if (lights_both(room, found.way, size)) {
            Fix told;
            found.way.tell(told, least_between(room, found.way, before, size));
            result.number = told.number;
            result.after = told.after;
            return result;
        }
        before = size;
    }
    return result;
}

}  // namespace understudy
