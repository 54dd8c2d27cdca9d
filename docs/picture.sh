#!/bin/sh
# Draws docs/choir-gown.png from the running service.
set -eu
cd "$(dirname "$0")"
curl -sSf -H 'Content-Type: application/json' -H 'Accept: image/svg+xml' -d @../examples/choir-gown.json \
  "http://localhost:${PORT:-8080}/v1/size-runs" | rsvg-convert --unlimited -w 1400 -b white -o choir-gown.png
