#!/bin/sh
# Builds everything and runs every test; at the end prints the time taken and the ten slowest classes. Installs what the tests read our files with, where it is missing (Debian).
# Options go to Maven: ./test.sh -Pthorough runs every seeded case instead of a sample.
set -eu
cd "$(dirname "$0")"
. ./install.sh
need java openjdk-17-jdk-headless
need javac openjdk-17-jdk-headless
need mvn maven
need_file /usr/lib/python3/dist-packages/ezdxf python3-ezdxf # reads DXF
need_file /usr/lib/python3/dist-packages/openpyxl python3-openpyxl # writes workbooks
need hp2xx hp2xx                                             # reads HP-GL
need rsvg-convert librsvg2-bin                               # draws SVG
need xmllint libxml2-utils                                   # reads XML
need pdftoppm poppler-utils                                  # draws PDF
need qpdf qpdf                                               # checks the structure of PDF
need mutool mupdf-tools                                      # checks the operators of PDF
need_file /usr/lib/postgresql postgresql                       # the other database of the store
need chromium-headless-shell chromium-headless-shell         # the browser of the page's tests
need chromedriver chromium-driver
need msgfmt gettext                                          # checks the catalogues of other languages
need node nodejs                                             # runs the page's unit tests and the JavaScript example
need_file /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core

started=$(date +%s)
report() {
  echo "The ten slowest test classes, in seconds:"
  find . -path '*/target/*-reports/TEST-*.xml' -exec sed -n 's/^<testsuite .* name="\([^"]*\)" time="\([^"]*\)".*/\2 \1/p' {} + | tr -d , | sort -rn | head -10
  seconds=$(($(date +%s) - started))
  echo "Total time: $((seconds / 60)) min $((seconds % 60)) s"
}
# Reports of tests that are gone, and classes, data and jars that are: neither is of this build.
rm -rf ./*/target/surefire-reports ./*/target/failsafe-reports size-tables/target/classes grading-core/target/classes grading-json/target/classes grading-json/target/*.jar
# The library is built a second time beside the tests that mostly wait, once all that it needs is there.
again=$(mktemp)
{
  until ls grading-json/target/*-sources.jar >/dev/null 2>&1; do sleep 1; done
  ./reproducible.sh
} >"$again" 2>&1 &
second=$!
trap 'kill "$second" 2>/dev/null || true; cat "$again"; rm "$again"; report' EXIT
# Two modules at a time: the job for a cluster does not need the service.
mvn -B -ntp -T 2 verify "$@"
ls grading-json/target/*-sources.jar
wait "$second"
