#!/bin/sh
# Packages the library a second time, in another folder, and compares the jars with those of the build here: the same sources give the same bytes. Run after a build.
set -eu
cd "$(dirname "$0")"
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
tar -c --exclude=target --exclude=.git . | tar -x -C "$copy"
(cd "$copy" && mvn -q -B -ntp package -Dmaven.test.skip=true -Dmaven.javadoc.skip=true -Dmaven.source.skip=false -Dspotless.check.skip=true -Denforcer.skip=true -pl grading-json -am)
hashes() {
  (cd "$1" && find size-tables/target grading-core/target grading-json/target -maxdepth 1 -name '*.jar' ! -name '*-javadoc.jar' ! -name '*-tests.jar' -exec sha256sum {} + | sort -k 2)
}
first=$(hashes .)
second=$(hashes "$copy")
if [ -z "$first" ] || [ "$first" != "$second" ]; then
  printf 'The build is not reproducible, or the one here holds files of an earlier one (mvn clean). First:\n%s\nSecond:\n%s\n' "$first" "$second" >&2
  exit 1
fi
for module in size-tables grading-core grading-json; do
  if grep -q -e '<parent>' -e 'springframework' "$module/.flattened-pom.xml"; then
    echo "$module/.flattened-pom.xml does not stand alone" >&2
    exit 1
  fi
done
echo "Built twice, the same bytes:"
echo "$first"
