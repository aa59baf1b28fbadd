#!/bin/sh
# fetch_denoiser.sh BUILD_DIR: brings trained weights of a denoising network to BUILD_DIR/denoiser/package. Runs again
# safely.
set -eu

[ $# -eq 1 ] || { echo "usage: fetch_denoiser.sh BUILD_DIR" >&2; exit 2; }
exec sh "$(dirname "$0")/fetch_package.sh" "$1/denoiser" denoiser 0.0.11 \
    QZndC8KMgt9AxENe+sbNlLlhDETxvRHNd/n48iHr6c1fO+CoQ4ST+lDiEOTgYP6jZOwI27ZcoRSrJM7EMONeFg== \
    package/tzas/rt_hdr_alb_nrm.tza package/tzas/LICENSE.txt package/LICENSE
