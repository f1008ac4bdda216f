#!/usr/bin/env bash
# Installs the Matrix homeserver that `npm run test:homeserver` runs against, built from source by Go. Does nothing where it is there already.
set -euo pipefail
version=v0.13.8
folder=${DENDRITE_BIN:-"$(cd "$(dirname "$0")/.." && pwd)/.cache/dendrite"}

if [ -x "$folder/generate-keys" ] && [ -x "$folder/create-account" ] && [ "$("$folder/dendrite" -version 2>/dev/null)" = "${version#v}" ]; then
  echo "Dendrite $version is in $folder."
  exit 0
fi
if ! command -v go >/dev/null; then
  echo 'Go is needed to build Dendrite (https://go.dev/dl/); the homeserver suite will say that it was not run.' >&2
  exit 1
fi
mkdir -p "$folder"
echo "Building Dendrite $version into $folder (a few minutes) ..."
for command in dendrite generate-keys create-account; do
  GOBIN="$folder" go install "github.com/matrix-org/dendrite/cmd/$command@$version"
done
echo "Dendrite $version is in $folder."
