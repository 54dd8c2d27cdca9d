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

# Starts are quicker with the libraries unpacked and their classes in an archive that is mapped into memory (class-data sharing, JEP 350), from Java 25 on read and linked (ahead-of-time cache, JEP 514). Both are made
# once for a build, by a service that answers a request of each form to itself and ends. Without the archive the service starts all the same.
jar=$(echo grading-service/target/grading-service-*-exec.jar)
app=grading-service/target/service
if [ "$(java -XshowSettings:properties -version 2>&1 | sed -n 's/^ *java.specification.version = //p')" -ge 25 ] 2>/dev/null; then
  make="-XX:AOTCacheOutput=$app/classes.aot"
  use="-XX:AOTCache=$app/classes.aot"
else
  make="-XX:ArchiveClassesAtExit=$app/classes.jsa"
  use="-XX:SharedArchiveFile=$app/classes.jsa -Xshare:auto"
fi
made=$(sha256sum "$jar" | cut -d ' ' -f 1)-$(java -version 2>&1 | sha256sum | cut -d ' ' -f 1)
if [ "$(cat "$app/made-of" 2>/dev/null)" != "$made" ]; then
  echo "Preparing quick starts" >&2
  rm -rf "$app"
  java -Djarmode=tools -jar "$jar" extract --destination "$app" >/dev/null
  mv "$app/$(basename "$jar")" "$app/service.jar"
  timeout 300 java "$make" -jar "$app/service.jar" --capwright.rehearsal --capwright.store=off \
    --server.address=127.0.0.1 --server.port=0 >/dev/null 2>&1 || echo "No archive of classes could be made; starts take longer." >&2
  echo "$made" >"$app/made-of"
fi
# On two processors the parallel collector answers a seventh more requests than the usual one.
case "${JDK_JAVA_OPTIONS-} ${JAVA_TOOL_OPTIONS-}" in
  *GC*) collector= ;;
  *) collector=-XX:+UseParallelGC ;;
esac
# shellcheck disable=SC2086
PORT="${PORT:-8080}" exec java $use $collector -jar "$app/service.jar"
