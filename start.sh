#!/bin/sh
# Builds the service and starts it; prints the address when it answers. Installs a JDK and Maven where they are missing (Debian).
set -eu
cd "$(dirname "$0")"
. ./install.sh
need java openjdk-17-jdk-headless
need javac openjdk-17-jdk-headless
need mvn maven
[ -d "${HOME:-/root}/.m2/repository/org/springframework" ] || echo "The first build fetches its libraries, which takes some minutes." >&2
log=$(mktemp)
trap 'rm -f "$log"' EXIT
echo "Building:" >&2
{ mvn -B package -DskipTests -Dmaven.javadoc.skip=true -Dmaven.source.skip=true -pl grading-service -am || echo failed >"$log.status"; } 2>&1 |
  tee "$log" |
  awk '/^\[INFO\] Building [^j]/ { print "  " $3, $4, $5; fflush() } /^Downloaded from/ && ++files % 50 == 0 { print "  " files " files fetched"; fflush() }' >&2
if [ -e "$log.status" ]; then
  rm -f "$log.status"
  grep -e '^\[ERROR\]' "$log" >&2 || tail -n 30 "$log" >&2
  exit 1
fi
rm -f "$log"
trap - EXIT
PORT="${PORT:-8080}" exec java -jar grading-service/target/grading-service-*-exec.jar
