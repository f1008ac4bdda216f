#!/bin/sh
# Makes bot/reply/fonts/DejaVuSans-latin-greek.ttf from DejaVuSans.ttf: the letters that nearly all charts need.
# Wants Python with fonttools 4 in the folder given: sh scripts/pictures/make-small-font.sh VENV
set -eu
cd "$(dirname "$0")/../../bot/reply/fonts"
"${1:?the folder of a Python environment with fonttools}/bin/pyftsubset" DejaVuSans.ttf \
  --unicodes=U+0020-007E,U+00A0-017F,U+0370-03FF,U+2010-2044,U+2190-2193,U+2212,U+25C6 \
  --output-file=DejaVuSans-latin-greek.ttf --layout-features= --no-hinting --drop-tables+=FFTM
