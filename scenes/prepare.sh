#!/usr/bin/env bash
# Makes this folder ready to use: libraries, the head, the program. Run it as often as you like; what is there is kept,
# and when everything is there it says nothing.
#
# Needs Debian 12 (or a system with the same package names), and the network the first time.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$top"
build=build

fail() {
    printf 'prepare: %s\n' "$*" >&2
    exit 1
}

# ---- libraries from the distribution; DEVELOPERS.md says what each is for ----

packages=(
    libembree-dev libopenimageio-dev libglm-dev libtinyobjloader-dev libtbb-dev libosd-dev
    libtomlplusplus-dev libcli11-dev nlohmann-json3-dev libfmt-dev libgtest-dev zlib1g-dev
    libpango1.0-dev fonts-dejavu-core libdnnl-dev ocl-icd-opencl-dev libimath-dev libopenexr-dev libpng-dev libturbojpeg0-dev
)

missing_packages() {
    local package state
    for package in "${packages[@]}"; do
        state=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
        [ "$state" = installed ] || printf '%s\n' "$package"
    done
    # A tool may have come by another road than the package of its name.
    command -v g++ >/dev/null || printf 'g++\n'
    command -v cmake >/dev/null || printf 'cmake\n'
    command -v make >/dev/null || command -v ninja >/dev/null || printf 'make\n'
    command -v pkg-config >/dev/null || printf 'pkg-config\n'
    command -v npm >/dev/null || printf 'npm\n'
}

install_packages() {
    local as_root=()
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || fail "these packages are missing, and only root can install them: $*
Ask whoever looks after this machine to run: apt-get install $*"
        as_root=(sudo)
    fi
    printf 'prepare: installing %s\n' "$*"
    local log=$build/prepare-packages.log
    "${as_root[@]}" apt-get update >"$log" 2>&1 || true # the lists already here may do; installing tells
    if ! "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y --no-install-recommends "$@" >>"$log" 2>&1; then
        tail -n 15 "$log" >&2
        fail "apt-get could not install: $*
Is the network there? The whole account is in $log"
    fi
}

mkdir -p "$build"
command -v dpkg-query >/dev/null || fail "this script knows Debian's packages only; DEVELOPERS.md lists what to install elsewhere"
mapfile -t missing < <(missing_packages)
[ "${#missing[@]}" -eq 0 ] || install_packages "${missing[@]}"

# ---- the head's data ----

bash assets/fetch_head.sh "$build"

# ---- trained weights, which clean pictures of noise; without them a simpler filter does ----

sh assets/fetch_denoiser.sh "$build" || printf 'prepare: going on without them; run this again to have them\n' >&2

# ---- the program ----

if ! cmake -S . -B "$build" -DCMAKE_RUNTIME_OUTPUT_DIRECTORY="$top/$build" >"$build/prepare-configure.log" 2>&1; then
    cat "$build/prepare-configure.log" >&2
    fail "CMake could not configure the build"
fi
# Only the lines that say something is being made; errors and warnings pass through.
cmake --build "$build" --parallel "$(nproc)" 2>&1 |
    { grep --line-buffered -vE '^(\[ *[0-9]+%\] Built target|Consolidate compiler|ninja: no work|gmake|\[0/1\])' || true; }

# ---- the head, made from the data by the program just built ----

head_maker=$build/prepare_head
package=$build/head/package
prepared=$build/head/prepared
stamp=$build/head/prepared.stamp
if [ ! -d "$prepared" ] || [ ! -e "$stamp" ] || [ "$head_maker" -nt "$stamp" ] ||
    [ "$package" -nt "$stamp" ]; then
    rm -f "$stamp"
    "$head_maker" "$package" "$prepared" >"$build/prepare-head.log" 2>&1 || {
        cat "$build/prepare-head.log" >&2
        fail "the head could not be made from its data"
    }
    touch "$stamp"
fi
