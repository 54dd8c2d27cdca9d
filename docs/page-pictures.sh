#!/bin/sh
# Copies the pictures of docs/page.md from where FirstVisitIT makes them: run that test first.
set -eu
cd "$(dirname "$0")"
mkdir -p page
cp ../contract-tests/target/first-visit/*.png page/
du -bc page/*.png | tail -1
