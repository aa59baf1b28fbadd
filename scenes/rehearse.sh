#!/usr/bin/env bash
# Renders a scene into build/<the scene's name>.png, setting everything up first when that is needed.
#   bash scenes/rehearse.sh [SCENE]
set -euo pipefail

case "${1-}" in
    -h | --help)
        echo "usage: bash scenes/rehearse.sh [SCENE]      (without SCENE: scenes/side-strip.toml)"
        exit 0
        ;;
esac
if [ "$#" -gt 1 ]; then
    echo "rehearse: one scene at a time; got $#" >&2
    exit 2
fi

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
scene=$(realpath -m -- "${1:-$top/scenes/side-strip.toml}")
if [ ! -f "$scene" ]; then
    echo "rehearse: there is no scene file ${1:-$scene}" >&2
    exit 2
fi

bash "$top/scenes/prepare.sh"
cd "$top"
# A scene of this folder goes by its short name, in messages too.
exec build/understudy render "${scene#"$top/"}" -o "build/$(basename "$scene" .toml).png"
