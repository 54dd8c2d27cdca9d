#!/bin/sh
# Measures orders on the running service: a batch of each length as a stream and as a job, with the peak of the heap, and single orders beside the same sleeve by made to measure, in turns. Prints Markdown. Run it
# after ./start.sh or mvn package; it starts a service of its own.
# Arguments: the database (embedded or postgresql, of which it starts a server of its own, with fsync), then the lengths of the batches (1000). Settings: KINDS of the lines (measurements sizes), WAYS (stream job),
# HEAP (256m), ROUNDS (5; 0 for none), ORDERS (40 in a round), JAVA_COMMAND.
set -eu
cd "$(dirname "$0")/.."
. ./install.sh
need curl curl
port=${PORT:-18998}
work=$(mktemp -d)
pid=
server=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true; [ -z "$server" ] || kill -INT "$server" 2>/dev/null || true; wait; rm -rf "$work"' EXIT
database=${1:-embedded}
[ $# -eq 0 ] || shift
store=$work/store
if [ "$database" = postgresql ]; then
  programs=$(ls -d /usr/lib/postgresql/*/bin | sort -V | tail -1)
  as=
  # The server refuses to run as root.
  [ "$(id -u)" != 0 ] || { chmod 755 "$work"; mkdir "$work/pg"; chown postgres "$work/pg"; as="setpriv --reuid=postgres --regid=postgres --clear-groups"; }
  $as "$programs/initdb" -D "$work/pg/data" -U capwright -A trust -E UTF8 >"$work/initdb.log"
  (cd / && exec $as "$programs/postgres" -D "$work/pg/data" -p $((port + 1)) -k '' -c listen_addresses=127.0.0.1) >"$work/pg.log" 2>&1 &
  server=$!
  until "$programs/createdb" -h 127.0.0.1 -p $((port + 1)) -U capwright store 2>/dev/null; do
    kill -0 "$server" || { cat "$work/pg.log" >&2; exit 1; }
    sleep 0.2
  done
  store="jdbc:postgresql://127.0.0.1:$((port + 1))/store?user=capwright"
elif [ "$database" != embedded ]; then
  echo "the database is embedded or postgresql" >&2
  exit 2
fi
command=${JAVA_COMMAND:-"java -Xmx${HEAP:-256m} -jar ${JAR:-$(echo grading-service/target/grading-service-*-exec.jar)}"}
# shellcheck disable=SC2086
JDK_JAVA_OPTIONS="-Xlog:gc:file=$work/gc.log" $command --server.port="$port" --server.address=127.0.0.1 --capwright.store="$store" >"$work/log" 2>&1 &
pid=$!
url=http://127.0.0.1:$port
tries=0
until curl -sf -o /dev/null "$url/actuator/health"; do
  kill -0 "$pid" 2>/dev/null || { cat "$work/log" >&2; exit 1; }
  tries=$((tries + 1))
  [ "$tries" -lt 600 ] || exit 1
  sleep 0.2
done
json='Content-Type: application/json'
lines='Content-Type: application/x-ndjson'
curl -sf -o /dev/null -X PUT -H "$json" --data-binary @examples/choir-gown.json "$url/v1/styles/measured"
now() { date +%s.%N; }
# peak: the most heap in use that any collection found, MB
peak() { awk '/->/ { match($0, /[0-9]+M->/); used = substr($0, RSTART, RLENGTH - 3) + 0; if (used > top) top = used } END { print top + 0 }' "$work/gc.log"; }
order=$(tr -d '\n' <examples/order.json | sed 's/"reference": *"[^"]*", *//')
# bodies KIND COUNT START: orders line by line. By measurements no two of ten thousand have the same files; by size they go through the run.
bodies() {
  awk -v kind="$1" -v count="$2" -v order="$order" 'BEGIN {
    for (i = 0; i < count; i++)
      if (kind == "sizes") printf "{\"style\":\"measured\",\"size\":\"%d\"}\n", 36 + 2 * (i % 6)
      else { line = order; sub(/"upperArmGirth": *[0-9.]+/, sprintf("\"upperArmGirth\":%.4f", 31 + (i % 10000) / 10000), line); sub(/{/, "{\"style\":\"measured\",", line); print line }
  }'
}
rate() { echo "$1 $2 $3" | awk '{ printf "%.1f\n", $1 / ($3 - $2) }'; }

bodies measurements 50 | curl -sf -o /dev/null -H "$lines" -T - -X POST "$url/v1/order-batches" # warms up
echo "| database | lines by | batch | lines | seconds | orders/s | peak heap, MB |"
echo "|---|---|---|---|---|---|---|"
for kind in ${KINDS:-measurements sizes}; do
  for way in ${WAYS:-stream job}; do
    for length in "${@:-1000}"; do
      : >"$work/gc.log"
      begun=$(now)
      if [ "$way" = stream ]; then
        taken=$(bodies "$kind" "$length" | curl -sf -H "$lines" -T - -X POST "$url/v1/order-batches" | grep -c '"status":201') || true
        ended=$(now)
      else
        job=$(bodies "$kind" "$length" | curl -sf -D - -o /dev/null -H "$lines" -H 'Prefer: respond-async' -T - -X POST "$url/v1/order-batches" |
          sed -n 's/^[Ll]ocation: *\([^[:space:]]*\).*/\1/p')
        curl -sfN -o /dev/null "$url$job/events"
        ended=$(now)
        taken=$(curl -sf "$url$job/results" | grep -c '"status":201') || true
      fi
      [ "$taken" = "$length" ] || { echo "$taken of $length orders were taken" >&2; exit 1; }
      echo "| $database | $kind | $way | $length | $(echo "$begun $ended" | awk '{ printf "%.0f", $2 - $1 }') | $(rate "$length" "$begun" "$ended") | $(peak) |"
    done
  done
done

[ "${ROUNDS:-5}" != 0 ] || exit 0
# many FOLDER URL HEADER: sends every body of a folder, two at a time; gives requests a second
many() {
  begun=$(now)
  ls "$1" | xargs -P 2 -I{} curl -sf -o /dev/null -H "$json" -H "$3" --data-binary "@$1/{}" "$2"
  rate "${ORDERS:-40}" "$begun" "$(now)"
}
median() { sort -n | awk '{ v[NR] = $1 } END { print (NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }
# The same sleeves both ways, every one another wearer's, so that each order has files of its own.
sleeve=$(tr -d '\n' <examples/made-to-measure.json)
for round in $(seq "${ROUNDS:-5}"); do
  rm -rf "$work/orders" "$work/printed" "$work/sleeves"
  mkdir "$work/orders" "$work/printed" "$work/sleeves"
  for i in $(seq "${ORDERS:-40}"); do
    arm=31.$(printf %02d%02d "$round" "$i")
    echo "$order" | sed "s/\"upperArmGirth\": *[0-9.]*/\"upperArmGirth\":$arm/" >"$work/orders/$i"
    sed 's/{/{"files":["pdf"],/' "$work/orders/$i" >"$work/printed/$i"
    echo "$sleeve" | sed "s/\"upperArmGirth\": *[0-9.]*/\"upperArmGirth\":$arm/" >"$work/sleeves/$i"
  done
  many "$work/sleeves" "$url/v1/made-to-measure" 'Accept: application/pdf' >>"$work/pdf"
  many "$work/sleeves" "$url/v1/made-to-measure" 'Accept: application/zip' >>"$work/zip"
  many "$work/orders" "$url/v1/styles/measured/orders" 'Accept: application/json' >>"$work/taken"
  many "$work/printed" "$url/v1/styles/measured/orders" 'Accept: application/json' >>"$work/paper"
done
echo
echo "Single requests, two at a time, median of ${ROUNDS:-5} rounds: made to measure as PDF $(median <"$work/pdf")/s, with every file $(median <"$work/zip")/s; orders ($database), drawn and kept, with the PDF alone $(median <"$work/paper")/s, with every file $(median <"$work/taken")/s."
