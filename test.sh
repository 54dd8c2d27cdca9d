#!/bin/sh
# Builds everything and passes every test. Installs what the tests read our files with, where it is missing (Debian).
set -eu
cd "$(dirname "$0")"
. ./install.sh
need java openjdk-17-jdk-headless
need javac openjdk-17-jdk-headless
need mvn maven
need_file /usr/lib/python3/dist-packages/ezdxf python3-ezdxf # reads DXF
need hp2xx hp2xx                                             # reads HP-GL
need rsvg-convert librsvg2-bin                               # draws SVG
need xmllint libxml2-utils                                   # reads XML
need pdftoppm poppler-utils                                  # draws PDF
need qpdf qpdf                                               # checks the structure of PDF
need mutool mupdf-tools                                      # checks the operators of PDF
need chromium chromium                                       # the browser of the page's tests
need chromedriver chromium-driver
need node nodejs                                             # runs the JavaScript example
need_file /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core
mvn -B -ntp verify "$@"
